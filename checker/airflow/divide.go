package airflow

import (
	"math"

	q "github.com/ventlint/ventlint/checker/quantity"
)

const (
	mostNewtonSteps = 100
	spreadWanted    = 1e-9 // of the loss of a side
	spreadAccepted  = 1e-6 // where rounding allows no better
)

// divide finds the flows of a side at a total flow so that all paths lose the
// same. start is the last solution, or nil.
//
// Those flows are the least of a convex function, the sum over branches of the
// integral of loss over flow, among flows that add up. Newton's method replaces
// each branch by its tangent, which leaves a linear tree that two sweeps solve
// exactly; a search along the step, on the slope of that function, makes every
// step a descent. So it converges from any start.
func (t *side) divide(total float64, start assignment) (a assignment, steps int, err error) {
	if total < noFlow {
		return make(assignment, len(t.branches)), 0, nil
	}
	a = t.begin(total, start)
	for ; ; steps++ {
		most, spread := t.spread(a)
		if spread <= spreadWanted*most {
			return a, steps, nil
		}
		if steps == mostNewtonSteps || !t.step(a, total) {
			if spread <= spreadAccepted*most {
				return a, steps, nil
			}
			return nil, steps, &NotConverged{steps, q.Pressure(spread)}
		}
	}
}

// begin scales the start to the total, or gives every end the same flow.
func (t *side) begin(total float64, start assignment) assignment {
	if sum := start.sum(t.roots[:min(len(start), len(t.roots))]); sum > 0 {
		return start.times(total / sum)
	}
	a := make(assignment, len(t.branches))
	for i := len(a) - 1; i >= 0; i-- {
		if a[i] = a.sum(t.branches[i].children); t.branches[i].run < 0 {
			a[i] = 1
		}
	}
	return a.times(total / max(1, a.sum(t.roots)))
}

// spread is the greatest sum along a path and its distance from the least.
func (t *side) spread(a assignment) (most, spread float64) {
	least := math.Inf(1)
	for i, sum := range t.along(a) {
		if t.branches[i].run < 0 {
			most, least = max(most, sum), min(least, sum)
		}
	}
	return most, max(0, most-least)
}

// step moves the flows by one damped Newton step; false when there is no way down.
func (t *side) step(a assignment, total float64) bool {
	direction := t.linear(a, total).flows(total)
	for i := range direction {
		direction[i] -= a[i]
	}
	slope := func(share float64) (sum float64) {
		for i := range t.branches {
			sum += t.branches[i].drop(a[i]+share*direction[i]) * direction[i]
		}
		return sum
	}
	first := slope(0)
	if !(first < 0) {
		return false
	}
	share := wayDown(slope, -first/2)
	for i := range a {
		a[i] += share * direction[i]
	}
	return share > 0
}

// wayDown is how much of a step to take: all of it unless that leads up again
// steeply, else a part near the bottom.
func wayDown(slope func(float64) float64, steep float64) float64 {
	low, share := 0.0, 1.0
	for high, tries := 1.0, 0; tries < 50; tries++ {
		switch s := slope(share); {
		case s > steep:
			high = share
		case s < -steep && share < 1:
			low = share
		default:
			return share
		}
		share = low + (high-low)/2
	}
	return low
}
