package envelope

import (
	"cmp"
	"fmt"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Superposition is a rule by which unbalanced fans and infiltration together make
// the air change of a house. Unbalanced fans add less than their full flow,
// because they shut out a part of the infiltration; the rules differ in how much,
// so a report must name the one it used.
type Superposition int

// The rules in use. I is infiltration without fans, U the unbalanced part of the
// fan flows, B the balanced part.
const (
	// Quadrature is B + sqrt(U^2 + I^2), of older ASHRAE Fundamentals and ASHRAE
	// 136 (memory): a quick estimate of yearly air change.
	Quadrature Superposition = iota
	// HalfFan is B + max(U, I + U/2), of the residential load chapter of ASHRAE
	// Fundamentals (memory): for heat loads.
	HalfFan
	// Power is B + (I^1.5 + U^1.5)^(2/3) for an exhaust surplus. For a supply surplus
	// it is B + U + (I^1.5 - U^1.5)^(2/3), or B + U where I is below U. From notes on a
	// US load procedure (secondary) that give the infiltration alone and print the
	// outer exponent as 0.67, which would not leave I unchanged when U is 0.
	Power
)

// String names the rule.
func (s Superposition) String() string {
	switch s {
	case Quadrature:
		return "quadrature"
	case HalfFan:
		return "half fan"
	case Power:
		return "power"
	}
	return fmt.Sprintf("superposition %d", int(s))
}

// Combine is the outdoor air that fans and infiltration bring together. Supply and
// exhaust are the sums of the fans that run, infiltration is without fans; all
// from 0 to 100 m3/s. An unknown rule is an error.
func (s Superposition) Combine(supply, exhaust, infiltration q.Flow) (q.Flow, error) {
	err := cmp.Or(checkFlow("supply flow", supply), checkFlow("exhaust flow", exhaust), checkFlow("infiltration", infiltration),
		bounds.Check("superposition rule", float64(s), float64(Quadrature), float64(Power)))
	if err != nil {
		return 0, err
	}
	surplus, natural := float64(supply-exhaust), float64(infiltration)
	return min(supply, exhaust) + q.Flow(s.withFan(surplus, natural)), nil
}

// withFan is what a surplus of supply, or below 0 of exhaust, makes with
// infiltration.
func (s Superposition) withFan(surplus, natural float64) float64 {
	unbalanced := math.Abs(surplus)
	switch s {
	case Quadrature:
		return math.Hypot(unbalanced, natural)
	case HalfFan:
		return max(unbalanced, natural+unbalanced/2)
	}
	const inner, outer = 3.0 / 2, 2.0 / 3
	if surplus < 0 {
		return math.Pow(math.Pow(natural, inner)+math.Pow(unbalanced, inner), outer)
	}
	rest := max(0, math.Pow(natural, inner)-math.Pow(unbalanced, inner))
	return unbalanced + math.Pow(rest, outer)
}
