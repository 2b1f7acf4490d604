package moistair

import (
	"cmp"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// FrostOnset is the warmest outdoor temperature at which the exhaust side of a
// core freezes with this indoor air: the exhaust, by temperatures alone, falls
// below 0 C and below its dew point. It is false when even air at Coldest does
// not freeze it.
//
// Where the core passes moisture, outdoor air is taken as saturated, which
// leaves the most vapor in the exhaust. Heat of condensation is left out, which
// is on the safe side for the air, as is an apparent effectiveness in place of the
// core's own; cold corners may still freeze a little earlier. With Latent 0 and a dew point above 0 C it is DryFrostOnset.
func (c Core) FrostOnset(indoor State, supply, extract MassFlow) (q.Temperature, bool, error) {
	err := cmp.Or(c.check(), indoor.check("indoor air"), checkMass("supply mass flow", supply), checkMass("extract mass flow", extract))
	if err != nil {
		return 0, false, err
	}
	sh := c.shares(supply, extract)
	frosts := func(t float64) bool {
		return sh.freezes(State{t, saturatedRatio(t, indoor.pressure), indoor.pressure}, indoor)
	}
	warm := indoor.dryBulb
	for warm > float64(Coldest) && !frosts(warm) {
		warm--
	}
	if warm = max(warm, float64(Coldest)); !frosts(warm) {
		return 0, false, nil
	}
	return q.Temperature(crossing(warm, min(warm+1, indoor.dryBulb), frosts)), true, nil
}

// freezes is the criterion of frost on the exhaust side.
func (sh shares) freezes(outdoor, indoor State) bool {
	t := between(indoor.dryBulb, outdoor.dryBulb, sh.exhaustHeat)
	w := between(indoor.humidity, outdoor.humidity, sh.exhaustMoisture)
	return t < freezing && saturation(t) < vaporOf(w, indoor.pressure)
}

// DryFrostOnset is the outdoor temperature at which the exhaust of a core that
// passes no moisture falls to 0 C, whatever the humidity: T_in - (T_in - 0 C)/eps.
// It is false when that is below Coldest. The effectiveness is that of the
// exhaust side, eps m_min/m_e, from 0 to 1; indoor air is from 0 C to Hottest.
// Source: the heat balance of the core.
func DryFrostOnset(indoor q.Temperature, effectiveness q.Ratio) (q.Temperature, bool, error) {
	err := cmp.Or(
		bounds.Check("indoor temperature", indoor, freezing, Hottest),
		bounds.Check("effectiveness", effectiveness, 0, 1))
	if err != nil {
		return 0, false, err
	}
	toFreezing := float64(indoor) - freezing
	if float64(effectiveness)*float64(indoor-Coldest) < toFreezing {
		return 0, false, nil
	}
	if toFreezing <= 0 {
		return indoor, true, nil
	}
	return indoor - q.Temperature(toFreezing/float64(effectiveness)), true, nil
}

// FrostMargin is how much warmer the outdoor air is than the frost onset;
// negative means that the core freezes.
func FrostMargin(outdoor, onset q.Temperature) q.TemperatureDifference {
	return q.TemperatureDifference(outdoor - onset)
}
