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
// document.MissingAll. A Site is safe for concurrent reading.
type Site struct {
	design   *design.Design
	places   map[design.Placed]*place
	drawn    drawn
	building func() *building
}

// New prepares the geometry of a design, which must not change afterwards.
func New(d *design.Design) *Site {
	s := &Site{design: d, places: map[design.Placed]*place{}, drawn: newDrawn(d.StatedDistances)}
	s.building = sync.OnceValue(func() *building { return newBuilding(d) })
	prepare(s, d.Openings)
	prepare(s, d.BuildingOpenings)
	prepare(s, d.Sources)
	prepare(s, d.Lines)
	return s
}

func prepare[T design.Placed](s *Site, things []T) {
	for _, t := range things {
		s.places[t] = newPlace(t)
	}
}

// Distance is the shortest straight line between the nearest edges of two
// things, in any direction, whatever stands in between; 0 where they touch. To a
// line of the plan it is the distance on the plan.
func (s *Site) Distance(a, b any) (q.Length, error) {
	m, err := s.Measure(a, b)
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
	if !ok || reflect.ValueOf(placed).IsNil() {
		return nil, fmt.Errorf("found %T, expected an opening, a source or a line of the design", thing)
	}
	if p, known := s.places[placed]; known {
		return p, nil
	}
	return newPlace(placed), nil
}

func (s *Site) pair(a, b any) (first, second *place, err error) {
	if first, err = s.place(a); err != nil {
		return nil, nil, err
	}
	second, err = s.place(b)
	return first, second, err
}
