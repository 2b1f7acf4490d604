package facts

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/site"
)

// mostDistances is how many pairs have a line: far more than a house has.
const mostDistances = 2000

// distanceLines are the distances of every intake from exhausts and sources, along
// the outside of the building too where the straight line runs through it.
func (f *Facts) distanceLines() []Line {
	var lines []Line
	for _, intake := range f.openings("intake") {
		var others []design.Placed
		for _, e := range f.openings("exhaust") {
			others = append(others, e)
		}
		for _, s := range f.Design.Sources {
			others = append(others, s)
		}
		for _, other := range others {
			if len(lines) >= mostDistances {
				return append(lines, Line{Name: "further distances", Trouble: fmt.Sprintf("more than %d: these are not listed", mostDistances), Source: "geometry"})
			}
			lines = append(lines, f.distanceLine(intake, other)...)
		}
	}
	return lines
}

func (f *Facts) distanceLine(a, b design.Placed) []Line {
	of := fmt.Sprintf("%s and %s", design.Label(a), design.Label(b))
	straight := Line{Name: "distance", Of: of, Formula: "shortest straight line between nearest edges", Source: "geometry"}
	lines := []Line{*f.measured(straight, func() (site.Measurement, error) { return f.Site.Measure(a, b) }, a, b).line}
	if through, err := f.Site.Through(a, b); err == nil && through {
		along := Line{Name: "distance along the outside", Of: of, Formula: "shortest path between nearest edges that stays outside the building", Source: "geometry"}
		lines = append(lines, *f.measured(along, func() (site.Measurement, error) { return f.Taut(a, b) }, a, b).line)
	}
	return lines
}

// measured takes the ends of the line, or the drawing that states it, as inputs.
func (f *Facts) measured(line Line, measure func() (site.Measurement, error), a, b design.Placed) result[q.Length] {
	return compute(f, line, func(w *working) func() (q.Length, error) {
		m, err := measure()
		if err != nil {
			fromError(w, "", m.Length, err)
			return nil
		}
		if s, is := b.(*design.Source); is && m.Stated == nil && f.Site.PointOnly(s) {
			w.line.Taken = "the place of " + design.Label(s) + " is that of its nearest edge, since the design says that it is a point"
		}
		switch {
		case m.Stated != nil:
			w.take(Input{"stated on a drawing", m.Length, m.Stated.Ref, "distance"})
		case m.Placed:
			w.take(Input{Name: "edge of " + design.Label(a), Value: f.spot(m.From)})
			for i := 1; i < len(m.Path)-1; i++ {
				w.take(Input{Name: fmt.Sprintf("bend %d", i), Value: f.spot(m.Path[i])})
			}
			w.take(Input{Name: "edge of " + design.Label(b), Value: f.spot(m.To)})
		}
		return func() (q.Length, error) { return m.Length, nil }
	})
}

// spot is a place of the site in the units of the design.
func (f *Facts) spot(p [3]float64) string {
	at := func(i int) string { return q.Format(q.Length(p[i]), f.units()) }
	return fmt.Sprintf("x %s, y %s, z %s", at(0), at(1), at(2))
}
