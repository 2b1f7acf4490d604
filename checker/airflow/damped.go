package airflow

import (
	"errors"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

var errAllClosed = errors.New("no end has a flow, expected one or more above 0")

// Design is the losses at the flows of the design. Branches that lose less than the
// critical path need the difference as damper loss. Flows must be of this system and
// agree within FlowTolerance, else the error is an *UnknownFlows or a *FlowMismatch.
func (s *System) Design(flows Flows) (*Losses, error) {
	inlet, outlet, err := s.design(flows)
	if err != nil {
		return nil, err
	}
	return s.losses(inlet, outlet, true)
}

// Damped is the losses at another total flow, 0 to 100 m3/s, with dampers that keep
// the proportions of the design.
func (s *System) Damped(flows Flows, total q.Flow) (*Losses, error) {
	if err := bounds.Check("total flow", total, 0, mostFlow); err != nil {
		return nil, err
	}
	d, err := s.damped(flows)
	if err != nil {
		return nil, err
	}
	return s.losses(d.inlet.times(float64(total)/d.total), d.outlet.times(float64(total)/d.total), true)
}

// damped is a system whose flows keep their proportions.
type damped struct {
	*System
	inlet, outlet assignment
	total         float64
}

func (s *System) damped(flows Flows) (damped, error) {
	inlet, outlet, err := s.design(flows)
	if err != nil {
		return damped{}, err
	}
	total := max(inlet.sum(s.inlet.roots), outlet.sum(s.outlet.roots))
	if total == 0 {
		return damped{}, errAllClosed
	}
	return damped{s, inlet, outlet, total}, nil
}

// pressure is what the fan must make at a total flow.
func (d damped) pressure(total float64) (float64, error) {
	share := total / d.total
	return d.System.inlet.greatest(d.inlet.times(share)) + d.System.outlet.greatest(d.outlet.times(share)), nil
}

func (a assignment) times(share float64) assignment {
	scaled := make(assignment, len(a))
	for i := range a {
		scaled[i] = share * a[i]
	}
	return scaled
}

// along is the loss of the path to each branch, that branch included.
func (t *side) along(a assignment) []float64 {
	sums := make([]float64, len(t.branches))
	for i := range t.branches {
		b := &t.branches[i]
		sums[i] = b.drop(a[i])
		if b.parent >= 0 {
			sums[i] += sums[b.parent]
		}
	}
	return sums
}

// greatest is the loss of the critical path, zero for an empty side.
func (t *side) greatest(a assignment) float64 {
	most := 0.0
	for _, sum := range t.along(a) {
		most = max(most, sum)
	}
	return most
}
