package airflow

// linear is a side whose branches are replaced by their tangents: a branch with
// what lies beyond it loses offset + slope*flow.
type linear struct {
	*side
	offset, slope []float64
}

// linear takes the tangents at some flows and joins them from the ends to the fan.
func (t *side) linear(a assignment, total float64) linear {
	l := linear{t, make([]float64, len(a)), make([]float64, len(a))}
	for i := len(a) - 1; i >= 0; i-- {
		b := &t.branches[i]
		l.offset[i], l.slope[i] = b.tangent(a[i], total)
		if len(b.children) > 0 {
			offset, slope := l.parallel(b.children)
			l.offset[i] += offset
			l.slope[i] += slope
		}
	}
	return l
}

// tangent is the chord over a short stretch around a flow, which never is level
// where there is resistance.
func (b *branch) tangent(flow, total float64) (offset, slope float64) {
	h := max(1e-4*max(flow, -flow), 1e-7*total)
	slope = (b.drop(flow+h) - b.drop(flow-h)) / (2 * h)
	return b.drop(flow) - slope*flow, slope
}

// parallel joins branches that begin at one junction. Two or more have a slope.
func (l linear) parallel(branches []int) (offset, slope float64) {
	if len(branches) == 1 {
		return l.offset[branches[0]], l.slope[branches[0]]
	}
	var conductance, weighted float64
	for _, i := range branches {
		conductance += 1 / l.slope[i]
		weighted += l.offset[i] / l.slope[i]
	}
	return weighted / conductance, 1 / conductance
}

// flows solves the linear tree at a total flow, from the fan to the ends.
func (l linear) flows(total float64) assignment {
	a := make(assignment, len(l.branches))
	l.pass(a, l.roots, total)
	for i, b := range l.branches {
		l.pass(a, b.children, a[i])
	}
	return a
}

func (l linear) pass(a assignment, branches []int, total float64) {
	if len(branches) == 1 {
		a[branches[0]] = total
		return
	}
	offset, slope := l.parallel(branches)
	pressure := offset + slope*total
	for _, i := range branches {
		a[i] = (pressure - l.offset[i]) / l.slope[i]
	}
}
