package moistair

import (
	"cmp"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Exchange is what a core makes of two airs.
type Exchange struct {
	// Supply and Exhaust are the air that leaves toward the rooms and toward
	// outdoors, fan heat included, condensate gone.
	Supply, Exhaust State

	// DryExhaust is the exhaust temperature at the core by temperatures alone,
	// T_i - eps (m_min/m_e)(T_i - T_o): no fan, no heat of condensation. In
	// winter it is colder than the air that leaves, and frost is judged by it.
	DryExhaust q.Temperature

	// SupplyWater and ExhaustWater are what condenses out of each stream.
	SupplyWater, ExhaustWater Condensate

	// Heat is the enthalpy, Sensible its part by temperature, and Moisture the
	// water that the supply air has taken up in the core, fan heat aside. All are
	// negative when the core keeps heat or moisture out.
	Heat, Sensible q.Power
	Moisture       MassFlow

	// OutdoorAir is the part of the supply mass flow that comes from outdoors.
	OutdoorAir MassFlow

	// Frost tells whether the exhaust side freezes: DryExhaust is below 0 C and
	// below the dew point of the exhaust air.
	Frost bool
}

// Condenses tells whether water leaves either stream, so that a drain is needed.
func (x Exchange) Condenses() bool { return x.SupplyWater.Total()+x.ExhaustWater.Total() > 0 }

// Run computes the air that leaves a core:
//
//	supply:  T_s = T_o + eps (m_min/m_s)(T_i - T_o),  W_s likewise with the latent eps
//	exhaust: W_x by the balance of water, T_x by the balance of enthalpy
//
// A stream that would be above saturation gives off condensate at its enthalpy;
// the heat of condensation warms that stream. With unequal flows m_min is the
// smaller. Air is taken as one state for each stream: where it leaves, a cold
// corner of a core may condense or freeze earlier. Inputs out of range, or two
// pressures, are an error. Source: definition of effectiveness (Core) and
// balances.
func (c Core) Run(o Operation) (Exchange, error) {
	if err := cmp.Or(c.check(), o.check()); err != nil {
		return Exchange{}, err
	}
	sh := c.shares(o.Supply, o.Extract)
	supply, exhaust := o.leaving(sh)
	x := Exchange{
		DryExhaust:   q.Temperature(between(o.Indoor.dryBulb, o.Outdoor.dryBulb, sh.exhaustHeat)),
		SupplyWater:  supply.condensate(float64(o.Supply)),
		ExhaustWater: exhaust.condensate(float64(o.Extract)),
		OutdoorAir:   o.Supply * MassFlow(1-min(c.Transfer, 1)),
		Frost:        sh.freezes(o.Outdoor, o.Indoor),
	}
	x.recover(o, supply)
	var bad, worse error
	x.Supply, bad = supply.withFan("supply air", o.SupplyFan, o.Supply, o.Outdoor.pressure)
	x.Exhaust, worse = exhaust.withFan("exhaust air", o.ExhaustFan, o.Extract, o.Outdoor.pressure)
	if err := cmp.Or(bad, worse); err != nil {
		return Exchange{}, err
	}
	return x, nil
}

// leaving gives both streams as they leave the core.
func (o Operation) leaving(sh shares) (supply, exhaust fog) {
	out, in, p := o.Outdoor, o.Indoor, o.Outdoor.pressure
	t := between(out.dryBulb, in.dryBulb, sh.supplyHeat)
	w := between(out.humidity, in.humidity, sh.supplyMoisture)
	gain := enthalpy(t, w) - enthalpy(out.dryBulb, out.humidity)
	h := enthalpy(in.dryBulb, in.humidity) - gain*float64(o.Supply/o.Extract)
	return settle(enthalpy(t, w), w, p), settle(h, between(in.humidity, out.humidity, sh.exhaustMoisture), p)
}

func (x *Exchange) recover(o Operation, supply fog) {
	m, out := float64(o.Supply), o.Outdoor
	x.Heat = q.Power(m * (enthalpy(supply.temperature, supply.vapor) - enthalpy(out.dryBulb, out.humidity)))
	x.Sensible = q.Power(m * (airHeat + vaporHeat*out.humidity) * (supply.temperature - out.dryBulb))
	x.Moisture = MassFlow(m * (supply.vapor - out.humidity))
}

func between(from, to, share float64) float64 { return from + share*(to-from) }
