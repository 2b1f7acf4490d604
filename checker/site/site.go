package site

import (
	"fmt"
	"reflect"
	"sync"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Site is the geometry of one design. Its methods take things: pointers to the
// Opening, BuildingOpening, Source or Line structs of the design. One input that
// the design does not give is an error of type *document.Missing, several are a
// document.MissingAll. A Site remembers what it works out and is for one goroutine.
type Site struct {
	design    *design.Design
	places    map[design.Placed]*place
	distances lengths
	drawn     drawn
	building  func() *building
}

// New prepares the geometry of a design, which must not change afterwards.
func New(d *design.Design) *Site {
	count := len(d.Openings) + len(d.BuildingOpenings) + len(d.Sources) + len(d.Lines)
	s := &Site{design: d, places: make(map[design.Placed]*place, count), drawn: newDrawn(d.StatedDistances), distances: newLengths(count)}
	s.building = sync.OnceValue(func() *building { return newBuilding(d) })
	prepare(s, d.Openings)
	prepare(s, d.BuildingOpenings)
	prepare(s, d.Sources)
	prepare(s, d.Lines)
	return s
}

func prepare[T design.Placed](s *Site, things []T) {
	list := make([]place, len(things))
	for i, t := range things {
		list[i] = newPlace(t, len(s.places))
		s.places[t] = &list[i]
	}
}

// Distance is the shortest straight line between the nearest edges of two
// things, in any direction, whatever stands in between; 0 where they touch. To a
// line of the plan it is the distance on the plan.
func (s *Site) Distance(a, b any) (q.Length, error) {
	first, second, err := s.pair(a, b)
	if err != nil {
		return 0, err
	}
	known := s.distances.of(first, second)
	if known != nil && *known != unmeasured {
		return q.Length(*known), nil
	}
	m, err := s.measure(first, second, inSpace, statedDistance)
	if err == nil && known != nil {
		*known = float64(m.Length)
	}
	return m.Length, err
}

// Horizontal is the distance on the plan between the nearest edges of two
// things; 0 where one lies above the other.
func (s *Site) Horizontal(a, b any) (q.Length, error) {
	m, err := s.MeasurePlan(a, b)
	return m.Length, err
}

// PointOnly tells whether a thing is measured as a point, which only sources may
// ask for.
func (s *Site) PointOnly(thing any) bool {
	p, err := s.place(thing)
	if err != nil || p.isLine() || !p.isPoint() {
		return false
	}
	return p.onWall() || p.where.At != nil
}

func (s *Site) place(thing any) (*place, error) {
	placed, ok := thing.(design.Placed)
	if p, known := s.places[placed]; known {
		return p, nil
	}
	if !ok || reflect.ValueOf(placed).IsNil() {
		return nil, fmt.Errorf("found %T, expected an opening, a source or a line of the design", thing)
	}
	p := newPlace(placed, notListed)
	return &p, nil
}

func (s *Site) pair(a, b any) (first, second *place, err error) {
	if first, err = s.place(a); err != nil {
		return nil, nil, err
	}
	second, err = s.place(b)
	return first, second, err
}
