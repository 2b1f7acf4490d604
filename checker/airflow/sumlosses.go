package airflow

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// checkVelocities refuses flows of air that is too fast for its losses to be known.
func (s *System) checkVelocities(inlet, outlet assignment) error {
	return cmp.Or(s.inlet.checkVelocities(inlet), s.outlet.checkVelocities(outlet))
}

func (t *side) checkVelocities(a assignment) error {
	for i := range t.branches {
		b := &t.branches[i]
		for k := range b.conduits {
			if err := bounds.Check("velocity", q.Velocity(a[i]/b.conduits[k].area), 0, mostVelocity); err != nil {
				return fmt.Errorf("run %q, section %d: %w", b.id, k+1, err)
			}
		}
	}
	return nil
}

// losses gives all figures at known flows.
func (s *System) losses(inlet, outlet assignment, damped bool) *Losses {
	in, out := s.sideLosses(&s.inlet, inlet, damped), s.sideLosses(&s.outlet, outlet, damped)
	flow := max(inlet.sum(s.inlet.roots), outlet.sum(s.outlet.roots))
	return &Losses{Flow: q.Flow(flow), Pressure: in.Pressure + out.Pressure, Inlet: in, Outlet: out}
}

func (s *System) sideLosses(t *side, a assignment, damped bool) SideLoss {
	var loss SideLoss
	sums := make([]q.Pressure, len(t.branches))
	for i := range t.branches {
		b := &t.branches[i]
		if b.parent >= 0 {
			sums[i] = sums[b.parent]
		}
		if b.run < 0 {
			e := s.endLoss(b, a[i], sums[i], t.path(b))
			loss.add(e)
			continue
		}
		r := s.runLoss(b, a[i])
		loss.Runs = append(loss.Runs, r)
		sums[i] += r.Loss
	}
	for i := range loss.Ends {
		if damped {
			loss.Ends[i].Damper = loss.Pressure - loss.Ends[i].Sum
		}
	}
	return loss
}

// path gives the runs from the fan to an end.
func (t *side) path(end *branch) []string {
	length := 0
	for i := end.parent; i >= 0; i = t.branches[i].parent {
		length++
	}
	ids := make([]string, length)
	for i := end.parent; i >= 0; i = t.branches[i].parent {
		length--
		ids[length] = t.branches[i].id
	}
	return ids
}

// add notes an end; the first of the greatest loss is critical.
func (l *SideLoss) add(e EndLoss) {
	l.Ends = append(l.Ends, e)
	if l.Critical == "" || e.Sum > l.Pressure {
		l.Critical, l.Pressure = e.ID, e.Sum
	}
}

func (s *System) endLoss(b *branch, flow float64, before q.Pressure, path []string) EndLoss {
	e := EndLoss{ID: b.id, Flow: q.Flow(flow), Path: path}
	e.Stated, e.Loss = statedAt(b.stated, flow)
	e.Sum = before + e.Loss
	return e
}

func (s *System) runLoss(b *branch, flow float64) RunLoss {
	r := RunLoss{ID: b.id, Flow: q.Flow(flow), Sections: slices.Grow([]SectionLoss(nil), len(b.conduits))}
	for i, section := range s.runs[b.run].Sections {
		loss := section.lossAt(&b.conduits[i], flow)
		r.Sections = append(r.Sections, loss)
		r.Loss += loss.Total
	}
	var stated q.Pressure
	r.Stated, stated = statedAt(b.stated, flow)
	r.Loss += stated
	return r
}

func statedAt(losses []StatedLoss, flow float64) (results []StatedResult, sum q.Pressure) {
	results = slices.Grow(results, len(losses))
	for _, l := range losses {
		p := q.Pressure(l.drop(flow))
		results = append(results, StatedResult{l, q.Flow(flow), p})
		sum += p
	}
	return results, sum
}
