package site

import (
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Measurement is one distance between two things.
type Measurement struct {
	Length q.Length
	Stated *design.StatedDistance // the dimension that stands in for geometry; nil when computed
	Placed bool                   // From and To are known
	From   [3]float64             // point of the first thing nearest to the second: x, y, z in metres
	To     [3]float64             // point of the second thing nearest to the first

	Through bool         // the straight line runs through the building; known to TautMeasure alone
	Path    [][3]float64 // of a string, from its first end through its bends to its last; of TautMeasure alone
}

// Measure gives the shortest straight line between the nearest edges, and where
// it runs. On the way to a line of the plan, z is 0.
func (s *Site) Measure(a, b any) (Measurement, error) {
	return s.measureAny(a, b, inSpace, statedDistance)
}

// MeasurePlan gives the distance on the plan between the nearest edges, and where
// it runs; z is 0.
func (s *Site) MeasurePlan(a, b any) (Measurement, error) {
	return s.measureAny(a, b, onPlan, statedHorizontal)
}

func (s *Site) measureAny(a, b any, as aspect, of figure) (Measurement, error) {
	first, second, err := s.pair(a, b)
	if err != nil {
		return Measurement{}, err
	}
	return s.measure(first, second, as, of)
}

func (s *Site) measure(first, second *place, as aspect, of figure) (Measurement, error) {
	m, err := compute(first, second, as)
	if stated, value := s.drawn.find(first, second, of); stated != nil {
		m.Length, m.Stated = value, stated
		return m, nil
	}
	return m, err
}

func compute(a, b *place, as aspect) (Measurement, error) {
	if a.isLine() || b.isLine() {
		as = onPlan
	}
	first, second, onSite := look(a, b, as)
	if err := problems(first, second); err != nil {
		return Measurement{}, err
	}
	found := nearest(first.shape, second.shape)
	m := Measurement{Length: q.Length(found.gap)}
	if onSite {
		m.Placed, m.From, m.To = true, found.from, found.to
	}
	return m, nil
}

// look gives the views to measure two things by: on the site, or in the plane of
// their wall when they share it and its own place is not fully given.
func look(a, b *place, as aspect) (first, second *view, onSite bool) {
	first, second = a.onSite(as), b.onSite(as)
	onSite = first.known() && second.known()
	if !onSite && a.wall != nil && a.wall == b.wall {
		first, second = a.inWall(as), b.inWall(as)
	}
	return first, second, onSite
}
