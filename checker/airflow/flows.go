package airflow

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Flows are the flows that a design states, by the id of a run or an end. Those it
// leaves out follow from the others where nothing leaks. An end with flow 0 is
// closed.
type Flows map[string]q.Flow

// FlowTolerance is the share by which stated flows may miss each other.
const FlowTolerance = 0.01

// assignment is the flow of each branch of a side; NaN is not known.
type assignment []float64

// design works out the flows of both sides.
func (s *System) design(flows Flows) (inlet, outlet assignment, err error) {
	if err := s.checkFlows(flows); err != nil {
		return nil, nil, err
	}
	inlet, inSum := s.inlet.sums(flows)
	outlet, outSum := s.outlet.sums(flows)
	if math.IsNaN(inSum) {
		inSum = outSum
	}
	if math.IsNaN(outSum) {
		outSum = inSum
	}
	unknownIn, errIn := s.inlet.share(s.fan, inlet, inSum)
	unknownOut, errOut := s.outlet.share(s.fan, outlet, outSum)
	if err := cmp.Or(errIn, errOut); err != nil {
		return nil, nil, err
	}
	if unknown := append(unknownIn, unknownOut...); unknown != nil {
		return nil, nil, &UnknownFlows{unknown}
	}
	return inlet, outlet, s.agree(flows, inlet, outlet)
}

func (s *System) checkFlows(flows Flows) error {
	given := 0
	check := func(what, id string) error {
		flow, is := flows[id]
		if !is {
			return nil
		}
		given++
		err := bounds.Check("flow", flow, 0, mostFlow)
		if out, is := err.(*bounds.Error); is {
			out.What = fmt.Sprintf("flow of %s %q", what, id)
		}
		return err
	}
	for _, r := range s.runs {
		if err := check("run", r.ID); err != nil {
			return err
		}
	}
	for _, e := range s.ends {
		if err := check("end", e.ID); err != nil {
			return err
		}
	}
	if given < len(flows) {
		return fmt.Errorf("flows of %s are given, expected runs or ends of the system", quoted(s.strange(flows)))
	}
	return nil
}

// strange gives the ids of flows that are none of the system, sorted.
func (s *System) strange(flows Flows) []string {
	others := maps.Clone(flows)
	for _, r := range s.runs {
		delete(others, r.ID)
	}
	for _, e := range s.ends {
		delete(others, e.ID)
	}
	return slices.Sorted(maps.Keys(others))
}

// sums works from the ends to the fan: a branch has the sum of its children, and
// where that is not known the flow that is stated for it.
func (t *side) sums(flows Flows) (a assignment, total float64) {
	a = make(assignment, len(t.branches))
	for i := len(t.branches) - 1; i >= 0; i-- {
		a[i] = math.NaN()
		if b := t.branches[i]; b.run >= 0 {
			a[i] = a.sum(b.children)
		}
		if flow, ok := flows[t.branches[i].id]; ok && math.IsNaN(a[i]) {
			a[i] = float64(flow)
		}
	}
	if len(t.roots) == 0 {
		return a, math.NaN()
	}
	return a, a.sum(t.roots)
}

func (a assignment) sum(branches []int) float64 {
	total := 0.0
	for _, i := range branches {
		total += a[i]
	}
	return total
}

// share works from the fan to the ends: where one flow at a junction is not known
// it is what the others leave. It gives the ends that stay unknown.
func (t *side) share(fan string, a assignment, total float64) (unknown []string, err error) {
	err = a.complete(fan, t.roots, total)
	for i, b := range t.branches {
		if b.run >= 0 {
			err = cmp.Or(err, a.complete(b.id, b.children, a[i]))
		} else if math.IsNaN(a[i]) {
			unknown = append(unknown, b.id)
		}
	}
	return unknown, err
}

// complete gives the only unknown branch at the end of a run what the others
// leave; where they leave next to nothing it stays unknown.
func (a assignment) complete(run string, branches []int, total float64) error {
	rest, open := total, -1
	for _, i := range branches {
		switch {
		case !math.IsNaN(a[i]):
			rest -= a[i]
		case open >= 0:
			return nil
		default:
			open = i
		}
	}
	switch {
	case open < 0:
	case rest > FlowTolerance*total || total == 0 && rest == 0:
		a[open] = rest
	case rest < -FlowTolerance*total:
		return &FlowMismatch{run, q.Flow(total), q.Flow(total - rest)}
	}
	return nil
}
