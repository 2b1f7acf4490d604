package airflow

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
)

// Run is a stretch of duct between two nodes in the direction of the air. A node
// is the fan, an end, or a junction, by any name.
type Run struct {
	ID       string
	From, To string
	Sections []Section
	Losses   []StatedLoss
}

// End is where air enters or leaves a system: an outdoor opening or a terminal. Its
// ID is the name of its node. It may also lie along a run's way, as a grille in the
// side of a trunk does.
type End struct {
	ID     string
	Losses []StatedLoss
}

// System is the runs on both sides of one fan: those that bring air to it, the
// inlet side, and those that take air from it, the outlet side. Each side is a tree;
// a side may be empty. NewSystem makes one. It does not change and may be used by
// many at a time.
type System struct {
	air           Air
	fan           string
	runs          []Run
	ends          []End
	inlet, outlet side
}

// NewSystem joins runs and ends around a fan, which is the name of its node. At most
// 1000 runs. What is wrong with single sections or losses is told with the run's or
// end's id; what is wrong with the layout is a *LayoutError. All errors are joined.
func NewSystem(air Air, fan string, runs []Run, ends []End) (*System, error) {
	if err := cmp.Or(air.check(), checkNames(fan, runs, ends)); err != nil {
		return nil, err
	}
	if err := checkLosses(runs, ends); err != nil {
		return nil, err
	}
	s := &System{air: air, fan: fan, runs: slices.Clone(runs), ends: slices.Clone(ends)}
	if err := s.grow(); err != nil {
		return nil, err
	}
	return s, nil
}

func checkLosses(runs []Run, ends []End) error {
	var all []error
	for _, r := range runs {
		for i, s := range r.Sections {
			if err := s.check(); err != nil {
				all = append(all, fmt.Errorf("run %q, section %d: %w", r.ID, i+1, err))
			}
		}
		if err := checkStated("run", r.ID, r.Losses); err != nil {
			all = append(all, err)
		}
	}
	for _, e := range ends {
		if err := checkStated("end", e.ID, e.Losses); err != nil {
			all = append(all, err)
		}
	}
	return errors.Join(all...)
}

func checkStated(what, id string, losses []StatedLoss) error {
	for _, l := range losses {
		if err := l.check(); err != nil {
			return fmt.Errorf("%s %q, loss %w", what, id, err)
		}
	}
	return nil
}
