package facts

import (
	"errors"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

var errNoCore = errors.New("a ventilator without a recovery core")

// hasCore tells a ventilator that passes heat between its streams.
func hasCore(unit *design.Ventilator) bool { return unit.Kind == "hrv" || unit.Kind == "erv" }

// airPressure is the pressure of the air at the elevation of the site.
func (f *Facts) airPressure() result[q.Pressure] {
	line := Line{Name: "air pressure at the site", Formula: "101325 Pa x (1 - 2.25577e-5 x elevation in m)^5.2559",
		Source: "standard atmosphere, ASHRAE Fundamentals chapter 1"}
	return compute(f, line, func(w *working) func() (q.Pressure, error) {
		d := f.Design.Dwelling
		elevation := given(w, "elevation", d.Elevation, d.Ref, "elevation")
		return func() (q.Pressure, error) { return moistair.StationPressure(elevation) }
	})
}

// effectiveness is the apparent sensible effectiveness of the core, which
// predicts the supply temperature; the listed efficiency leaves fan heat out.
func (f *Facts) effectiveness(unit *design.Ventilator) result[q.Ratio] {
	line := Line{Name: "apparent sensible effectiveness", Of: f.label(unit),
		Formula: "(SRE x (m cp (22 C - 0 C) + P/2) + P/2) / (m cp (22 C - 0 C)), m of standard air at the supply flow, P the power",
		Source:  "CSA C439 clauses 9.2.1 and 9.3.3.1, by a public energy model that quotes them"}
	return compute(f, line, func(w *working) func() (q.Ratio, error) {
		if !hasCore(unit) {
			w.trouble = errNoCore
			return nil
		}
		listed := given(w, "SRE", unit.Sensible, unit.Ref, "sensible_recovery")
		flow := given(w, "supply flow", unit.SupplyFlow, unit.Ref, "supply_flow")
		power := given(w, "P", unit.Power, unit.Ref, "power")
		return func() (q.Ratio, error) {
			rating, err := moistair.BalancedRating(flow, power)
			if err != nil {
				return 0, err
			}
			apparent, err := rating.Apparent(listed)
			return min(apparent, 1), err
		}
	})
}

// season is a design condition: the air outdoors and indoors.
type season struct {
	name    string
	outdoor func(f *Facts, w *working) func(p q.Pressure) (moistair.State, error)
	indoor  func(d *design.Dwelling) (t *q.Temperature, key string, rh *q.Ratio, humidityKey string)
}

// winter takes outdoor air as saturated, which leaves the most water.
var winter = season{"winter design",
	func(f *Facts, w *working) func(q.Pressure) (moistair.State, error) {
		d := f.Design.Dwelling
		t := given(w, "outdoor temperature", d.WinterOutdoor, d.Ref, "winter_outdoor")
		w.line.Taken = "outdoor air is saturated"
		return func(p q.Pressure) (moistair.State, error) { return moistair.FromRelativeHumidity(t, 1, p) }
	},
	func(d *design.Dwelling) (*q.Temperature, string, *q.Ratio, string) {
		return d.WinterIndoor, "winter_indoor", d.WinterHumidity, "winter_humidity"
	}}

var summer = season{"summer design",
	func(f *Facts, w *working) func(q.Pressure) (moistair.State, error) {
		d := f.Design.Dwelling
		dry := given(w, "outdoor temperature", d.SummerOutdoor, d.Ref, "summer_outdoor")
		wet := given(w, "outdoor wet bulb", d.SummerWetBulb, d.Ref, "summer_wet_bulb")
		return func(p q.Pressure) (moistair.State, error) { return moistair.FromWetBulb(dry, wet, p) }
	},
	func(d *design.Dwelling) (*q.Temperature, string, *q.Ratio, string) {
		return d.SummerIndoor, "summer_indoor", d.SummerHumidity, "summer_humidity"
	}}

// exchange is what the core makes of outdoor and indoor air.
func (f *Facts) exchange(unit *design.Ventilator, s season) result[moistair.Exchange] {
	line := Line{Name: "core at " + s.name, Of: f.label(unit),
		Formula: "balances of heat and moisture with the effectiveness on the smaller stream",
		Source:  "ASHRAE 84 and ISO 16494-1, from memory"}
	return compute(f, line, func(w *working) func() (moistair.Exchange, error) {
		core, operation := f.core(w, unit), f.air(w, s)
		supply := given(w, "supply flow", unit.SupplyFlow, unit.Ref, "supply_flow")
		extract := given(w, "extract flow", unit.ExtractFlow, unit.Ref, "extract_flow")
		var warmed q.Temperature
		if s.name == winter.name && preheats(unit) {
			warmed = from(w, "temperature before the core", f.entering(unit))
		}
		return func() (moistair.Exchange, error) {
			o, err := operation(supply, extract)
			if err == nil && warmed > 0 {
				o.Outdoor, err = moistair.Preheated(o.Outdoor, warmed)
			}
			if err != nil {
				return moistair.Exchange{}, err
			}
			return core().Run(o)
		}
	})
}

// core gathers what the core does; an energy-recovery core without a
// latent figure is asked for it.
func (f *Facts) core(w *working, unit *design.Ventilator) func() moistair.Core {
	sensible := from(w, "sensible effectiveness", f.effectiveness(unit))
	var latent, transfer q.Ratio
	if unit.Kind == "erv" || unit.Latent != nil {
		latent = given(w, "latent effectiveness", unit.Latent, unit.Ref, "latent_recovery")
	}
	if unit.ExhaustTransfer != nil {
		transfer = given(w, "exhaust air transfer ratio", unit.ExhaustTransfer, unit.Ref, "exhaust_air_transfer")
	}
	return func() moistair.Core { return moistair.Core{Sensible: sensible, Latent: latent, Transfer: transfer} }
}

// air gathers the states of outdoor and indoor air.
func (f *Facts) air(w *working, s season) func(supply, extract q.Flow) (moistair.Operation, error) {
	d := f.Design.Dwelling
	pressure := from(w, "air pressure", f.airPressure())
	outdoors := s.outdoor(f, w)
	t, key, rh, humidityKey := s.indoor(d)
	indoor := given(w, "indoor temperature", t, d.Ref, key)
	humidity := given(w, "indoor relative humidity", rh, d.Ref, humidityKey)
	return func(supply, extract q.Flow) (moistair.Operation, error) {
		var o moistair.Operation
		var errs [4]error
		o.Outdoor, errs[0] = outdoors(pressure)
		o.Indoor, errs[1] = moistair.FromRelativeHumidity(indoor, humidity, pressure)
		if err := errors.Join(errs[:]...); err != nil {
			return o, err
		}
		o.Supply, errs[2] = o.Indoor.MassFlow(supply)
		o.Extract, errs[3] = o.Indoor.MassFlow(extract)
		return o, errors.Join(errs[:]...)
	}
}

// part takes one figure of a computed whole, whose inputs are its own.
func part[W, T any](f *Facts, line Line, whole result[W], take func(W) T) result[T] {
	return compute(f, line, func(w *working) func() (T, error) {
		value := fromWhole(w, whole)
		w.line.Inputs, w.line.Taken, w.line.Note = whole.line.Inputs, whole.line.Taken, whole.line.Note
		return func() (T, error) { return take(value), nil }
	})
}

// fromWhole takes a computed whole without listing it as an input.
func fromWhole[T any](w *working, r result[T]) T {
	if r.err == nil {
		return r.value
	}
	if missing := missingOf(r.err); missing != nil {
		w.missing = append(w.missing, missing...)
	} else {
		w.trouble = r.err
	}
	return r.value
}

func (f *Facts) supplyTemperature(unit *design.Ventilator, s season) result[q.Temperature] {
	line := Line{Name: "supply air at " + s.name, Of: f.label(unit),
		Formula: "outdoor air before the core + effectiveness x (smaller flow / supply flow) x (indoor - that)", Source: "definition of effectiveness"}
	return part(f, line, f.exchange(unit, s), func(x moistair.Exchange) q.Temperature { return x.Supply.DryBulb() })
}

func (f *Facts) heatRecovered(unit *design.Ventilator) result[q.Power] {
	line := Line{Name: "heat recovered at winter design", Of: f.label(unit),
		Formula: "dry air in the supply flow x rise of its enthalpy in the core", Source: "heat balance of the core"}
	return part(f, line, f.exchange(unit, winter), func(x moistair.Exchange) q.Power { return x.Heat })
}

func (f *Facts) dryExhaust(unit *design.Ventilator) result[q.Temperature] {
	line := Line{Name: "exhaust air at winter design", Of: f.label(unit),
		Formula: "indoor - effectiveness x (smaller flow / extract flow) x (indoor - outdoor air before the core); heat of condensation left out", Source: "definition of effectiveness"}
	return part(f, line, f.exchange(unit, winter), func(x moistair.Exchange) q.Temperature { return x.DryExhaust })
}

// indoorDewPoint is the temperature at which indoor air begins to leave water on
// what it touches in winter.
func (f *Facts) indoorDewPoint() result[q.Temperature] {
	line := Line{Name: "dew point of the indoor air at winter design", Formula: "the temperature at which vapor of this pressure is saturated; vapor pressure = relative humidity x saturation pressure of the indoor temperature",
		Source: "equations of Hyland and Wexler, ASHRAE Fundamentals chapter 1, from memory"}
	return compute(f, line, func(w *working) func() (q.Temperature, error) {
		d := f.Design.Dwelling
		pressure := from(w, "air pressure", f.airPressure())
		indoor := given(w, "indoor temperature", d.WinterIndoor, d.Ref, "winter_indoor")
		humidity := given(w, "indoor relative humidity", d.WinterHumidity, d.Ref, "winter_humidity")
		return func() (q.Temperature, error) {
			air, err := moistair.FromRelativeHumidity(indoor, humidity, pressure)
			if err != nil {
				return 0, err
			}
			w.take(Input{Name: "vapor pressure", Value: air.VaporPressure()})
			return air.DewPoint(), nil
		}
	})
}

// aboveDewPoint is how much warmer exhaust air leaves the core than the dew point of
// the indoor air; below it a core that passes no moisture is wet.
func (f *Facts) aboveDewPoint(unit *design.Ventilator) result[q.TemperatureDifference] {
	line := Line{Name: "exhaust air above the indoor dew point at winter design", Of: f.label(unit),
		Formula: "exhaust air - dew point; negative: water condenses on the extract side, unless the core passes enough of it on", Source: "difference"}
	return compute(f, line, func(w *working) func() (q.TemperatureDifference, error) {
		exhaust := from(w, "exhaust air", f.dryExhaust(unit))
		dew := from(w, "dew point", f.indoorDewPoint())
		return func() (q.TemperatureDifference, error) { return q.TemperatureDifference(exhaust - dew), nil }
	})
}

func (f *Facts) moistureRecovered(unit *design.Ventilator) result[q.Mass] {
	line := Line{Name: "moisture recovered in an hour at winter design", Of: f.label(unit),
		Formula: "dry air in the supply flow x rise of its humidity ratio in the core x 1 h", Source: "water balance of the core"}
	return part(f, line, f.exchange(unit, winter), func(x moistair.Exchange) q.Mass { return q.Mass(x.Moisture * secondsPerHour) })
}

func (f *Facts) condenses(unit *design.Ventilator) result[bool] {
	line := Line{Name: "water condenses in the core at winter design", Of: f.label(unit),
		Formula: "a stream would leave above saturation", Source: "balances of heat and moisture"}
	return part(f, line, f.exchange(unit, winter), func(x moistair.Exchange) bool { return x.Condenses() })
}

// frostOnset is the warmest outdoor temperature at which the core freezes; where
// none freezes it, the coldest that is looked at.
func (f *Facts) frostOnset(unit *design.Ventilator) result[q.Temperature] {
	line := Line{Name: "frost begins in the core at", Of: f.label(unit),
		Formula: "the warmest outdoor air whose exhaust falls below 0 C and below its dew point",
		Source:  "heat and moisture balance; heat of condensation is left out, on the safe side"}
	return compute(f, line, func(w *working) func() (q.Temperature, error) {
		core, operation := f.core(w, unit), f.air(w, winter)
		supply := given(w, "supply flow", unit.SupplyFlow, unit.Ref, "supply_flow")
		extract := given(w, "extract flow", unit.ExtractFlow, unit.Ref, "extract_flow")
		return func() (q.Temperature, error) {
			o, err := operation(supply, extract)
			if err != nil {
				return 0, err
			}
			onset, freezes, err := core().FrostOnset(o.Indoor, o.Supply, o.Extract)
			if !freezes {
				return moistair.Coldest, err
			}
			return onset, err
		}
	})
}

// frostMargin is how much warmer the air that meets the core is at winter design
// than the onset of frost.
func (f *Facts) frostMargin(unit *design.Ventilator) result[q.TemperatureDifference] {
	line := Line{Name: "frost margin at winter design", Of: f.label(unit),
		Formula: "air that enters the core - frost onset; negative: the core freezes unless it is protected otherwise", Source: "difference"}
	return compute(f, line, func(w *working) func() (q.TemperatureDifference, error) {
		onset := from(w, "frost onset", f.frostOnset(unit))
		entering := from(w, "air that enters the core", f.entering(unit))
		return func() (q.TemperatureDifference, error) { return moistair.FrostMargin(entering, onset), nil }
	})
}
