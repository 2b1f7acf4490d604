package site

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Taut is the length of TautMeasure.
func (s *Site) Taut(a, b any) (q.Length, error) {
	m, err := s.TautMeasure(a, b)
	return m.Length, err
}

// TautMeasure gives the length of a string pulled tight between the nearest edges
// of two things, outside the building, and where it runs. Where the straight line
// of Measure stays outside, it is that line. Otherwise the string bends around
// corners that stick out, goes straight through the air across those that do not,
// and goes over the tops of walls. At a line of the plan it ends at any height.
//
// The building is what its walls enclose, up to the lowest of their tops, and each
// wall up to its own top. What lies lower than that on the roof takes the first of
// these down to its level. The ground, the roof, eaves and parapets are left out:
// they could only make a string longer. Over walls of different heights around a
// footprint with hollows, the string passes straight from the first wall to the
// last, whatever rises in between. So the length never exceeds the true one, but
// for rounding: it is exact to 1e-6 m, and to rounding around corners that the ends of
// the string lie in one wall with. Where walls meet with a gap, the string
// may cut as deep into the building as the widest gap.
//
// A stated distance takes the place of both lengths, and then Through is false. The
// walls must stand in order around the footprint, 200 at most; their tops are asked
// for only where the straight line crosses the footprint, and nothing of them for
// two things on one wall.
func (s *Site) TautMeasure(a, b any) (Measurement, error) {
	l, err := s.line(a, b)
	if err != nil || !l.m.Through {
		return l.m, err
	}
	return l.pull()
}

// Through tells whether the straight line of Measure runs through the building;
// never when a stated distance takes its place. What it asks for is that of
// TautMeasure.
func (s *Site) Through(a, b any) (bool, error) {
	l, err := s.line(a, b)
	return l.m.Through, err
}

// pull finds the shortest string, beginning with the ends that are nearest.
func (l *line) pull() (Measurement, error) {
	b, best := l.site.building(), l.outside
	for _, p := range l.pairs() {
		if p.gap >= best.length {
			break
		}
		best = b.over(p.from, p.to, b.around(p.from, p.to, best))
	}
	if math.IsInf(best.length, 1) {
		return Measurement{}, fmt.Errorf("no string leads from %s to %s outside the building, expected both beside the footprint or above it",
			design.Label(l.first.thing), design.Label(l.last.thing))
	}
	m := l.m
	m.Length, m.Path = q.Length(best.length), bent(best.path)
	m.From, m.To = m.Path[0], m.Path[len(m.Path)-1]
	return m, nil
}

// twoEnds is an end of each thing, and how near they are.
type twoEnds struct {
	from, to *end
	gap      float64
}

func (l *line) pairs() []twoEnds {
	var list []twoEnds
	for i := range l.froms {
		for k := range l.tos {
			from, to := &l.froms[i], &l.tos[k]
			list = append(list, twoEnds{from, to, from.body.to(to.body).gap})
		}
	}
	slices.SortStableFunc(list, func(a, b twoEnds) int { return cmp.Compare(a.gap, b.gap) })
	return list
}
