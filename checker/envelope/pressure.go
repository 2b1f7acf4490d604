package envelope

import (
	"cmp"
	"errors"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

var errNoLeakage = errors.New("leakage is not given, expected a flow at 50 Pa or an air change rate and a volume")

// Flow is what leaks at a pressure across the envelope, Q = Q50 (dP/50)^n with the
// sign of dP: air leaves where the house is above outdoors. The pressure is
// within 10 kPa.
func (l Leakage) Flow(p q.Pressure) (q.Flow, error) {
	if l.flow50 == 0 {
		return 0, errNoLeakage
	}
	if err := bounds.Check("pressure", p, -mostPressure, mostPressure); err != nil {
		return 0, err
	}
	return q.Flow(l.at(float64(p))), nil
}

// Pressure is what an unbalanced flow puts the house under without wind and
// stack, the inverse of Flow: dP = 50 (|Qs - Qe|/Q50)^(1/n), with the sign of
// Qs - Qe. The imbalance is supply minus exhaust of every fan that runs, within
// 100 m3/s. Fans deliver less against some 100 Pa and more, so a larger result
// means only that the house cannot bear the imbalance. Source: the power law.
func (l Leakage) Pressure(imbalance q.Flow) (q.Pressure, error) {
	if l.flow50 == 0 {
		return 0, errNoLeakage
	}
	if err := bounds.Check("unbalanced flow", imbalance, -mostFlow, mostFlow); err != nil {
		return 0, err
	}
	size := math.Pow(math.Abs(float64(imbalance))/l.flow50, 1/l.exponent)
	return q.Pressure(math.Copysign(size, float64(imbalance))) * testPressure, nil
}

// LeastFlow50 is the smallest leakage at 50 Pa that keeps the depressurization by
// a net exhaust flow at or under a limit: Q50 = Qnet (50/limit)^n. The flow is from
// 0 to 100 m3/s, the limit from 0.1 Pa to 10 kPa. Source: the power law.
func LeastFlow50(netExhaust q.Flow, limit q.Pressure, exponent float64) (q.Flow, error) {
	err := cmp.Or(
		checkFlow("net exhaust flow", netExhaust),
		bounds.Check("depressurization limit", limit, 0.1, mostPressure),
		checkExponent(exponent))
	if err != nil {
		return 0, err
	}
	return netExhaust * q.Flow(math.Pow(float64(testPressure/limit), exponent)), nil
}

// LargestNetExhaust is the net exhaust flow that brings the house to a limit of
// depressurization, which is given as a positive pressure up to 10 kPa.
func (l Leakage) LargestNetExhaust(limit q.Pressure) (q.Flow, error) {
	if err := bounds.Check("depressurization limit", limit, 0, mostPressure); err != nil {
		return 0, err
	}
	return l.Flow(limit)
}

func (l Leakage) at(p float64) float64 {
	return math.Copysign(l.flow50*math.Pow(math.Abs(p)/float64(testPressure), l.exponent), p)
}
