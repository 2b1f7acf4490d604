package envelope

import (
	"cmp"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// heightPower is z, the exponent of the height factor.
const heightPower = 0.4

const (
	leastFloor q.Area = 1
	mostFloor  q.Area = 100_000

	leastWeather = 0.05
	mostWeather  = 2.0
)

// HeightFactor is (H/Hr)^0.4. H, 1 m to 30 m, is from the lowest to the highest
// above-grade point of the pressure boundary; Hr is 8.2 ft in IP and 2.5 m in SI.
// Source: ASHRAE 62.2-2013 to 2019, secondary; 8.2 ft from memory.
func HeightFactor(height q.Length, s q.System) (float64, error) {
	if err := bounds.Check("height above grade", height, 1, 30); err != nil {
		return 0, err
	}
	return math.Pow(float64(height/referenceHeight(s)), heightPower), nil
}

// StoreyFactor is the height factor by storeys, 0.5 to 10: storeys^0.4, 1.00 for
// one, 1.32 for two. Source: standard work specifications of a US national
// laboratory, table A-1.
func StoreyFactor(storeys float64) (float64, error) {
	if err := bounds.Check("storeys", storeys, 0.5, 10); err != nil {
		return 0, err
	}
	return math.Pow(storeys, heightPower), nil
}

// NormalizedLeakage is NL = 1000 (ELA/floor area)(H/Hr)^0.4, without a unit. The
// leakage area is up to 10 m2, the floor area 1 m2 to 100 000 m2. Source: ASHRAE
// 62.2-2013 and 2016, secondary.
func NormalizedLeakage(ela, floor q.Area, height q.Length, s q.System) (float64, error) {
	factor, err := HeightFactor(height, s)
	if err := cmp.Or(err, bounds.Check("leakage area", ela, 0, 10), checkFloor(floor)); err != nil {
		return 0, err
	}
	return 1000 * float64(ela/floor) * factor, nil
}

// NormalizedInfiltration is the effective yearly infiltration of ASHRAE 62.2-2013
// and 2016, from normalized leakage (0 to 100) and the weather-and-shielding
// factor of the place (0.05 to 2; listed ones are 0.29 to 1.56):
//
//	IP: cfm = NL wsf ft2/7.3      SI: L/s = NL wsf m2/1.44
//
// Each system has its own rounded constant; they differ by 0.2 %. Source:
// Uniform Mechanical Code, appendix E 605.1.3, which reprints it; 1.44 also
// secondary.
func NormalizedInfiltration(nl, weather float64, floor q.Area, s q.System) (q.Flow, error) {
	err := cmp.Or(bounds.Check("normalized leakage", nl, 0, 100), checkWeather(weather), checkFloor(floor))
	if err != nil {
		return 0, err
	}
	return q.Flow(nl * weather * float64(floor) * float64(perArea(s))), nil
}

// Infiltration is the effective yearly infiltration of ASHRAE 62.2-2019, straight
// from the leakage flow at 50 Pa: Q = 0.052 Q50 wsf (H/Hr)^0.4, for the
// weather-and-shielding factor of the place, 0.05 to 2. It agrees with
// NormalizedInfiltration within 1 % for an exponent of 0.65. Source: ASHRAE
// 62.2-2019 equation 4-3, secondary; the same 0.052 in work specifications for
// 62.2-2013.
func (l Leakage) Infiltration(weather float64, height q.Length, s q.System) (q.Flow, error) {
	if l.flow50 == 0 {
		return 0, errNoLeakage
	}
	factor, err := HeightFactor(height, s)
	if err := cmp.Or(err, checkWeather(weather)); err != nil {
		return 0, err
	}
	return q.Flow(0.052 * l.flow50 * weather * factor), nil
}

func referenceHeight(s q.System) q.Length {
	if s == q.IP {
		return 8.2 * foot
	}
	return 2.5
}

// perArea is a flow per area: 1/7.3 cfm/ft2 or 1/1.44 L/s per m2.
func perArea(s q.System) q.Velocity {
	if s == q.IP {
		return foot / minute / 7.3
	}
	return 0.001 / 1.44
}

const (
	foot   = 0.3048
	minute = 60
	cfm    = foot * foot * foot / minute
)

func checkWeather(w float64) error {
	return bounds.Check("weather and shielding factor", w, leastWeather, mostWeather)
}

func checkFloor(a q.Area) error { return bounds.Check("floor area", a, leastFloor, mostFloor) }
