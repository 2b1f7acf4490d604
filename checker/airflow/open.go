package airflow

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// NoResistance is an end to which air has a free way from a junction, so that
// nothing tells how air divides there.
type NoResistance struct{ End string }

// Error names the end.
func (e *NoResistance) Error() string {
	return fmt.Sprintf("%q: the way from the last junction loses nothing, expected the length, fittings or loss of what is there", e.End)
}

// NotConverged is a network whose flows were not found in the bounded number of
// steps. Tests know of none.
type NotConverged struct {
	Steps  int
	Uneven float64 // difference between the ways on from a junction, as a share
}

// Error tells steps and difference.
func (e *NotConverged) Error() string {
	return fmt.Sprintf("flows did not converge in %d steps, the ways from a junction still differ by %q", e.Steps, q.Ratio(e.Uneven))
}

// Open is the losses at a total flow, 0 to 100 m3/s, without dampers: air divides so
// that all paths of a side lose the same, within 1e-6 of it. Ends without resistance
// give a *NoResistance. No flows need to be known.
func (s *System) Open(total q.Flow) (*Losses, error) {
	if err := bounds.Check("total flow", total, 0, mostFlow); err != nil {
		return nil, err
	}
	n, err := s.open()
	if err != nil {
		return nil, err
	}
	if err := n.solve(max(0, float64(total))); err != nil {
		return nil, err
	}
	if err := s.checkVelocities(n.inlet, n.outlet); err != nil {
		return nil, err
	}
	losses := s.losses(n.inlet, n.outlet, false)
	losses.Iterations = n.iterations
	return losses, nil
}

// network is a system without dampers and the flows last found for it.
type network struct {
	*System
	inlet, outlet assignment
	iterations    int
	room          []float64
}

func (s *System) open() (*network, error) {
	for _, t := range []*side{&s.inlet, &s.outlet} {
		if end, ok := t.freeWay(); ok {
			return nil, &NoResistance{end}
		}
	}
	return &network{System: s, room: s.room()}, nil
}

// solve finds the flows of both sides at a total.
func (n *network) solve(total float64) error {
	var steps, more int
	var err error
	if n.inlet, steps, err = n.System.inlet.divide(total, n.inlet); err != nil {
		return err
	}
	n.outlet, more, err = n.System.outlet.divide(total, n.outlet)
	n.iterations = max(steps, more)
	return err
}

// pressure is what the fan must make at a total flow.
func (n *network) pressure(total float64) (float64, error) {
	if err := n.solve(total); err != nil {
		return 0, err
	}
	return n.greatest(n.inlet, n.outlet, 1, n.room), nil
}

// freeWay gives an end that a junction reaches without loss.
func (t *side) freeWay() (end string, found bool) {
	free := make([]string, len(t.branches)) // the end reached from the branch without loss
	junction := func(children []int) {
		for _, c := range children {
			if len(children) > 1 && free[c] != "" {
				end, found = free[c], true
			}
		}
	}
	for i := len(t.branches) - 1; i >= 0; i-- {
		b := &t.branches[i]
		junction(b.children)
		if b.drop(1) > 0 {
			continue
		}
		if b.run < 0 {
			free[i] = b.id
		}
		for _, c := range b.children {
			if free[i] == "" {
				free[i] = free[c]
			}
		}
	}
	junction(t.roots)
	return end, found
}
