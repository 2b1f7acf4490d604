package airflow

import "math"

// powers is a side whose branches are replaced by power laws: a branch with what
// lies beyond it loses loss*(Q/flow)^exponent. All flows are above zero; a branch
// that loses nothing is the only way on from its junction.
type powers struct {
	*side
	flow, loss, exponent []float64
}

// powers takes power laws at some flows, before which were others, and joins them
// from the ends to the fan.
func (t *side) powers(a, before assignment) powers {
	p := powers{t, a, make([]float64, len(a)), make([]float64, len(a))}
	for i := len(a) - 1; i >= 0; i-- {
		b := &t.branches[i]
		p.loss[i], p.exponent[i] = b.power(a[i], before[i])
		if len(b.children) > 0 {
			beyond, exponent := p.parallel(b.children, a[i])
			p.series(i, beyond, exponent)
		}
	}
	return p
}

// power is the loss at a flow and the slope of its logarithm over that of the flow:
// 1 in laminar flow, near 2 in turbulent flow, and more where one becomes the other.
// Of the slopes at the flow and on stretches as long as two of the last step it is
// the steepest, so that the next step does not swing across a steep place.
func (b *branch) power(flow, before float64) (loss, exponent float64) {
	const least = 1e-4
	loss = b.drop(flow)
	if loss == 0 {
		return 0, 1
	}
	stretch := min(max(2*math.Abs(math.Log(flow/before)), least), 1)
	for _, x := range []float64{-stretch, least, stretch} {
		exponent = max(exponent, math.Log(b.drop(flow*math.Exp(x))/loss)/x)
	}
	return loss, exponent
}

// series adds the loss beyond a branch to its own.
func (p powers) series(i int, beyond, exponent float64) {
	if sum := p.loss[i] + beyond; sum > 0 {
		p.exponent[i] = (p.loss[i]*p.exponent[i] + beyond*exponent) / sum
		p.loss[i] = sum
	}
}

// parallel is the loss at which branches that begin at one junction together carry
// a flow, and the exponent of that loss. The logarithm of what they carry rises and
// bends upward with that of the loss, so Newton's steps close in from above.
func (p powers) parallel(branches []int, total float64) (loss, exponent float64) {
	if i := branches[0]; len(branches) == 1 {
		return p.loss[i], p.exponent[i] // at its own flow, since it carries all
	}
	loss = p.loss[branches[0]]
	for range 100 {
		carried, slope := 0.0, 0.0
		for _, i := range branches {
			part := p.at(i, loss)
			carried, slope = carried+part, slope+part/p.exponent[i]
		}
		exponent = carried / slope
		step := exponent * math.Log(total/carried)
		loss *= math.Exp(step)
		if math.Abs(step) < 1e-14 {
			break
		}
	}
	return loss, exponent
}

// at is what a branch carries at a loss.
func (p powers) at(i int, loss float64) float64 {
	return p.flow[i] * math.Pow(loss/p.loss[i], 1/p.exponent[i])
}

// flows solves the tree of power laws at a total flow, from the fan to the ends.
func (p powers) flows(total float64) assignment {
	a := make(assignment, len(p.branches))
	least := leastShare * total
	p.pass(a, p.roots, total, least)
	for i, b := range p.branches {
		p.pass(a, b.children, a[i], least)
	}
	return a
}

// pass divides a flow among branches.
func (p powers) pass(a assignment, branches []int, total, least float64) {
	switch len(branches) {
	case 0:
	case 1: // which may lose nothing
		a[branches[0]] = total
	default:
		loss, _ := p.parallel(branches, total)
		for _, i := range branches {
			a[i] = max(least, p.at(i, loss))
		}
	}
}
