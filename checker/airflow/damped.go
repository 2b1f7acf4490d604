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
	if err == nil {
		err = s.checkVelocities(inlet, outlet)
	}
	if err != nil {
		return nil, err
	}
	return s.losses(inlet, outlet, true), nil
}

// Damped is the losses at another total flow, 0 to 100 m3/s, with dampers that keep
// the proportions of the design.
func (s *System) Damped(flows Flows, total q.Flow) (*Losses, error) {
	d, err := s.damped(flows)
	if err != nil {
		return nil, err
	}
	losses, err := d.losses(total)
	if err != nil {
		return nil, err
	}
	return losses(), nil
}

// damped is a system whose flows keep their proportions.
type damped struct {
	*System
	inlet, outlet assignment
	total         float64
	room          []float64
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
	return damped{s, inlet, outlet, total, s.room()}, nil
}

// losses are those at a total flow, worked out when they are asked for.
func (d damped) losses(total q.Flow) (func() *Losses, error) {
	if err := bounds.Check("total flow", total, 0, mostFlow); err != nil {
		return nil, err
	}
	share := float64(total) / d.total
	inlet, outlet := d.inlet.times(share), d.outlet.times(share)
	return func() *Losses { return d.System.losses(inlet, outlet, true) }, d.checkVelocities(inlet, outlet)
}

// pressure is what the fan must make at a total flow.
func (d damped) pressure(total float64) (float64, error) {
	return d.greatest(d.inlet, d.outlet, total/d.total, d.room), nil
}

// greatest is the loss of the critical paths of both sides at a share of some flows.
// room holds a number for each branch of a side.
func (s *System) greatest(inlet, outlet assignment, share float64, room []float64) float64 {
	return s.inlet.greatest(inlet, share, room) + s.outlet.greatest(outlet, share, room)
}

// room is that of greatest.
func (s *System) room() []float64 {
	return make([]float64, max(len(s.inlet.branches), len(s.outlet.branches)))
}

// greatest is the loss of the critical path, zero for an empty side.
func (t *side) greatest(a assignment, share float64, paths []float64) float64 {
	most := 0.0
	for i := range t.branches {
		b := &t.branches[i]
		paths[i] = b.drop(share * a[i])
		if b.parent >= 0 {
			paths[i] += paths[b.parent]
		}
		most = max(most, paths[i])
	}
	return most
}

func (a assignment) times(share float64) assignment {
	scaled := make(assignment, len(a))
	for i := range a {
		scaled[i] = share * a[i]
	}
	return scaled
}
