package moistair

import (
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const (
	freezing = 273.15 // K, 0 C
	triple   = 273.16 // K, where vapor, water and ice coexist

	coldestSaturation = freezing - 100 // K, ends of the saturation equations
	hottestSaturation = freezing + 200
)

// SaturationPressure is the pressure of water vapor over a flat surface of ice
// below the triple point (273.16 K) and of liquid water above it, from -100 C to
// 200 C. Both are equations of Hyland and Wexler (1983) as ASHRAE Fundamentals,
// chapter 1, prints them (equations 5 and 6, from memory):
//
//	ice:   ln p = C1/T + C2 + C3 T + C4 T^2 + C5 T^3 + C6 T^4 + C7 ln T
//	water: ln p = C8/T + C9 + C10 T + C11 T^2 + C12 T^3 + C13 ln T
//
// They meet at 611.66 Pa. Switching at 0 C would leave a step there.
func SaturationPressure(t q.Temperature) (q.Pressure, error) {
	if err := bounds.Check("saturation temperature", t, coldestSaturation, hottestSaturation); err != nil {
		return 0, err
	}
	return q.Pressure(saturation(float64(t))), nil
}

// SaturationTemperature is the temperature at which vapor of a pressure is
// saturated, the inverse of SaturationPressure: the dew point, and below the
// triple point the frost point. The pressure must be a saturation pressure of
// -100 C to 200 C, about 0.0014 Pa to 1.55 MPa.
func SaturationTemperature(p q.Pressure) (q.Temperature, error) {
	low, high := saturation(coldestSaturation), saturation(hottestSaturation)
	if err := bounds.Check("vapor pressure", p, q.Pressure(low), q.Pressure(high)); err != nil {
		return 0, err
	}
	return q.Temperature(saturatedAt(float64(p))), nil
}

func saturation(t float64) float64 {
	if t < triple {
		return math.Exp(overIce(t))
	}
	return math.Exp(overWater(t))
}

func overIce(t float64) float64 {
	const c1, c2, c3, c4, c5, c6, c7 = -5.6745359e+03, 6.3925247, -9.6778430e-03, 6.2215701e-07, 2.0747825e-09, -9.4840240e-13, 4.1635019
	return c1/t + c2 + t*(c3+t*(c4+t*(c5+t*c6))) + c7*math.Log(t)
}

func overWater(t float64) float64 {
	const c8, c9, c10, c11, c12, c13 = -5.8002206e+03, 1.3914993, -4.8640239e-02, 4.1764768e-05, -1.4452093e-08, 6.5459673
	return c8/t + c9 + t*(c10+t*(c11+t*c12)) + c13*math.Log(t)
}

// saturatedAt stays at the end of the range for pressures beyond it.
func saturatedAt(p float64) float64 {
	return crossing(coldestSaturation, hottestSaturation, func(t float64) bool { return saturation(t) <= p })
}
