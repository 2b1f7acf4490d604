package moistair

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// FromWetBulb is air of a dry bulb, thermodynamic wet bulb and total pressure,
// by the energy balance of adiabatic saturation, t and t* in C, W* saturated at
// t*, heats in kJ/kg:
//
//	t* from 0 C: W = ((2501 - 2.326 t*) W* - 1.006 (t - t*)) / (2501 + 1.86 t - 4.186 t*)
//	t* below:    W = ((2830 - 0.24 t*) W* - 1.006 (t - t*)) / (2830 + 1.86 t - 2.1 t*)
//
// A wet bulb above the dry bulb, or below that of dry air, is an error. Source:
// ASHRAE Fundamentals, chapter 1, equations 33 and 35 (from memory).
func FromWetBulb(dryBulb, wetBulb q.Temperature, p q.Pressure) (State, error) {
	s, err := dryAir(dryBulb, p)
	if err != nil {
		return State{}, err
	}
	if err := bounds.Check("wet bulb temperature", wetBulb, coldestSaturation, s.DryBulb()); err != nil {
		return State{}, err
	}
	s.humidity = wetBulbRatio(s.dryBulb, min(float64(wetBulb), s.dryBulb), s.pressure)
	if s.humidity < 0 {
		return State{}, fmt.Errorf("wet bulb temperature %q is below that of dry air at %s", wetBulb.String(), dryBulb)
	}
	return s, nil
}

// WetBulb is the thermodynamic wet bulb, the inverse of FromWetBulb. For a
// narrow band of air just above 0 C both a wet and a frozen bulb have one; the
// wet one is given.
func (s State) WetBulb() q.Temperature {
	if s.pressure == 0 {
		return 0
	}
	low, high := coldestSaturation, s.dryBulb
	ratio := func(t float64) float64 { return wetBulbRatio(s.dryBulb, t, s.pressure) }
	switch {
	case high <= freezing:
	case ratio(freezing) <= s.humidity:
		low = freezing
	default:
		high = freezing
	}
	return q.Temperature(crossing(low, high, func(t float64) bool { return ratio(t) <= s.humidity }))
}

// wetBulbRatio is negative where the wet bulb is too low for any air. A wet bulb
// of 32 F, which is not exactly 273.15 K, counts as wet.
func wetBulbRatio(t, wet, p float64) float64 {
	heat, atZero := iceHeat, sublimation
	if q.Compare(wet, freezing) >= 0 {
		heat, atZero = waterHeat, evaporation
	}
	c, cw := t-freezing, wet-freezing
	return ((atZero+(vaporHeat-heat)*cw)*saturatedRatio(wet, p) - airHeat*(t-wet)) / (atZero + vaporHeat*c - heat*cw)
}
