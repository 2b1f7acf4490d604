package airflow

import (
	"cmp"
	"math"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// agree holds that the stated flow of every run is the sum of those beyond it and
// that both sides of the fan have the same.
func (s *System) agree(flows Flows, inlet, outlet assignment) error {
	if err := cmp.Or(s.inlet.agree(flows, inlet), s.outlet.agree(flows, outlet)); err != nil {
		return err
	}
	in, out := inlet.sum(s.inlet.roots), outlet.sum(s.outlet.roots)
	if len(s.inlet.roots) > 0 && len(s.outlet.roots) > 0 && !agrees(in, out) {
		return &FlowMismatch{s.fan, q.Flow(in), q.Flow(out)}
	}
	return nil
}

func (t *side) agree(flows Flows, a assignment) error {
	for i, b := range t.branches {
		stated, ok := flows[b.id]
		if ok && b.run >= 0 && !agrees(float64(stated), a.sum(b.children)) {
			return &FlowMismatch{b.id, stated, q.Flow(a[i])}
		}
	}
	return nil
}

func agrees(a, b float64) bool {
	return math.Abs(a-b) <= FlowTolerance*max(math.Abs(a), math.Abs(b))
}
