package airflow

import (
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
)

// Regime is how air flows in a duct.
type Regime string

// The regimes, by Reynolds number: up to 2000, from there to 4000, and above.
const (
	Laminar      Regime = "laminar"
	Transitional Regime = "transitional"
	Turbulent    Regime = "turbulent"
)

const (
	laminarUpTo     = 2000.0
	larger          = 2300.0 // from here on the larger of both laws counts
	turbulentAbove  = 4000.0
	mostReynolds    = 1e9
	mostRoughness   = 0.05 // of the hydraulic diameter: the end of published charts
	newtonStart     = 6.0  // 1/sqrt(f) of f = 0.028, as ducts of houses have
	newtonSteps     = 8
	newtonPrecision = 1e-7 // of the last step: one more would be below the rounding of numbers
)

// Friction is a Darcy friction factor and how it was found.
type Friction struct {
	Factor     float64
	Regime     Regime
	Iterations int // Newton steps of the Colebrook equation
}

// FrictionFactor is the Darcy friction factor at a Reynolds number, over 0 to 1e9,
// and a roughness as a share of the hydraulic diameter, 0 to 0.05.
//
// Laminar flow has 64/Re. Turbulent flow has the Colebrook equation, 1/sqrt(f) =
// -2 log10(r/3.7 + 2.51/(Re sqrt(f))), solved by Newton's method. From Re 2300 to 4000
// flow may be either, and the larger factor counts, which is always Colebrook's: a
// design must work in both. So that loss rises with flow without a jump, the factor
// goes from 64/Re at 2000 to Colebrook's at 2300 in a straight line, which again is on
// the safe side. Source: ASHRAE Fundamentals 2021, chapter 21, section 3.1 and
// equation 19; 64/Re is the standard result; the choice in between is practice.
func FrictionFactor(reynolds, roughness float64) (Friction, error) {
	if !(reynolds > 0 && reynolds <= mostReynolds) {
		return Friction{}, &bounds.Error{What: "Reynolds number", Value: reynolds, Low: "more than 0", High: mostReynolds}
	}
	if err := bounds.Check("relative roughness", roughness, 0, mostRoughness); err != nil {
		return Friction{}, err
	}
	return friction(reynolds, bounds.Clamp(roughness, 0, mostRoughness)), nil
}

func friction(re, roughness float64) Friction {
	switch {
	case re <= laminarUpTo:
		return Friction{Factor: 64 / re, Regime: Laminar}
	case re < larger:
		low := 64 / laminarUpTo
		high, steps := colebrook(larger, roughness)
		share := (re - laminarUpTo) / (larger - laminarUpTo)
		return Friction{low + share*(high-low), Transitional, steps}
	}
	f, steps := colebrook(re, roughness)
	if re <= turbulentAbove {
		return Friction{f, Transitional, steps}
	}
	return Friction{f, Turbulent, steps}
}

// colebrook solves x + 2 log10(a + b x) = 0 for x = 1/sqrt(f). The left side rises
// and bends downward, so the first of Newton's steps from the right of the root leads
// to its left, and all further ones close in from there without overshoot. Each is in
// proportion to the square of the one before.
func colebrook(re, roughness float64) (f float64, steps int) {
	a, b := roughness/3.7, 2.51/re
	const perDecade = 2 / math.Ln10
	x := newtonStart
	for steps < newtonSteps {
		steps++
		inside := a + b*x
		step := (x + perDecade*math.Log(inside)) / (1 + perDecade*b/inside)
		x -= step
		if math.Abs(step) <= newtonPrecision*x {
			break
		}
	}
	return 1 / (x * x), steps
}
