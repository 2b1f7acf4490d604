package site

import (
	"math"
	"slices"
)

// near is how many times the slack a corner is looked for beside a line. The
// depth of a line below one wall changes evenly along it, so that a piece of the
// line that is no deeper than the slack in its middle is no deeper than twice the
// slack at its ends, and passes no corner unseen.
const near = 4

// stretch is a part of a segment, as shares of its way.
type stretch struct{ from, to float64 }

// clear tells whether a straight string on the plan stays outside.
func (b *building) clear(from, to vec) bool { return len(b.indoors(segment{from, to})) == 0 }

// indoors gives the parts of a segment of the plan that run through the
// footprint, in order.
func (b *building) indoors(s segment) []stretch {
	var list []stretch
	var room [8]float64
	cuts := b.cuts(s, room[:0])
	shortest := b.slack / max(s.b.minus(s.a).length(), b.slack)
	for i := range cuts[1:] {
		from, to := cuts[i], cuts[i+1]
		if to-from < shortest || !b.deep(between(s.a, s.b, (from+to)/2)) {
			continue
		}
		if last := len(list) - 1; last >= 0 && from-list[last].to < shortest {
			list[last].to = to
			continue
		}
		list = append(list, stretch{from, to})
	}
	return list
}

// cuts are the places where a segment may pass from outside to inside: where it
// meets walls, and where corners lie beside it.
func (b *building) cuts(s segment, cuts []float64) []float64 {
	cuts = append(cuts, 0, 1)
	way := s.b.minus(s.a)
	square := way.dot(way)
	beside := near * b.slack * math.Sqrt(square)
	side := turnOf(way, b.walls[0].a.minus(s.a))
	for _, w := range b.walls {
		before := side
		side = turnOf(way, w.b.minus(s.a))
		if before*side <= 0 && before != side {
			cuts = append(cuts, between(w.a, w.b, before/(before-side)).minus(s.a).dot(way)/square)
		}
		if math.Abs(side) <= beside {
			cuts = append(cuts, w.b.minus(s.a).dot(way)/square)
		}
	}
	cuts = slices.DeleteFunc(cuts, func(t float64) bool { return !(t >= 0 && t <= 1) })
	slices.Sort(cuts)
	return cuts
}

// deep tells whether a point lies inside the footprint and not on its surface.
func (b *building) deep(p vec) bool {
	if !b.area.holds(p) {
		return false
	}
	for _, w := range b.walls {
		if w.isBeside(p, b.slack) && w.toPoint(p).gap <= b.slack {
			return false
		}
	}
	return true
}

// isBeside tells whether a point lies in the rectangle along x and y around a segment of
// the plan, or no farther from it than given.
func (s segment) isBeside(p vec, by float64) bool {
	return min(s.a[0], s.b[0])-by <= p[0] && p[0] <= max(s.a[0], s.b[0])+by &&
		min(s.a[1], s.b[1])-by <= p[1] && p[1] <= max(s.a[1], s.b[1])+by
}

// stops tells whether the building stands in the way of a straight string. Where
// the string runs over the footprint it has to lie above the low part of the
// building, and above the walls where it comes in and goes out.
func (b *building) stops(s segment, low float64) bool {
	for _, inside := range b.indoors(segment{s.a.onPlan(), s.b.onPlan()}) {
		for _, t := range []float64{inside.from, inside.to} {
			p := between(s.a, s.b, t)
			if p[2] < max(low, b.topAt(p.onPlan()))-b.slack {
				return true
			}
		}
	}
	return false
}
