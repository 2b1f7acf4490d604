package airflow

import "math"

const (
	mostSteps      = 200
	unevenWanted   = 1e-9 // of the loss beyond a junction
	unevenAccepted = 1e-6 // where rounding allows no better

	stillAir   = 1e-12 // m3/s: so little that it loses nothing
	leastShare = 1e-50 // of the total, for any branch
	asked      = 1e-30 // share of the total from which a junction must be even
)

// divide finds the flows of a side at a total flow so that all ways on from each
// junction lose the same. start is the last solution, or nil.
//
// Each step replaces every branch by a power law, which leaves a tree that two
// sweeps solve. Power laws keep all flows above zero and fit ducts over many orders
// of magnitude, so that few steps do.
func (t *side) divide(total float64, start assignment) (a assignment, steps int, err error) {
	if total < stillAir {
		return make(assignment, len(t.branches)), 0, nil
	}
	a = t.begin(total, start)
	before := a
	uneven := t.uneven(a, total)
	for ; !(uneven <= unevenWanted) && steps < mostSteps; steps++ {
		a, before = t.powers(a, before).flows(total), a
		uneven = t.uneven(a, total)
	}
	if !(uneven <= unevenAccepted) {
		return nil, steps, &NotConverged{steps, uneven}
	}
	return a, steps, nil
}

// begin scales the start to the total, or gives every end the same flow.
func (t *side) begin(total float64, start assignment) assignment {
	if start != nil {
		if sum := start.sum(t.roots); sum > 0 {
			return start.times(total / sum)
		}
	}
	a := make(assignment, len(t.branches))
	for i := len(a) - 1; i >= 0; i-- {
		if a[i] = a.sum(t.branches[i].children); t.branches[i].run < 0 {
			a[i] = 1
		}
	}
	return a.times(total / max(1, a.sum(t.roots)))
}

// uneven is the greatest difference between a way on from a junction and that of
// the most air, as a share of the larger. It is NaN when any loss is. Ways that
// next to no air takes do not count.
func (t *side) uneven(a assignment, total float64) (worst float64) {
	loss := make([]float64, len(a)) // of a branch and the way of the most air beyond it
	join := func(branches []int, flow float64) float64 {
		main := branches[0]
		for _, i := range branches {
			if a[i] > a[main] {
				main = i
			}
		}
		for _, i := range branches {
			if i != main && !(flow < asked*total) && !(a[i] <= leastShare*total) {
				worst = max(worst, math.Abs(loss[i]-loss[main])/max(loss[i], loss[main]))
			}
		}
		return loss[main]
	}
	for i := len(a) - 1; i >= 0; i-- {
		b := &t.branches[i]
		loss[i] = b.drop(a[i])
		if len(b.children) > 0 {
			loss[i] += join(b.children, a[i])
		}
	}
	if len(t.roots) > 0 {
		join(t.roots, total)
	}
	return worst
}
