package site

import (
	"math"
	"slices"
)

// portions gives the parts of the walls that a piece of the plan covers, or the
// points where a segment crosses them.
func (b *building) portions(flat piece) []segment {
	var list []segment
	for _, w := range b.walls {
		if flat.toSegment(w).gap > b.slack {
			continue
		}
		switch p := flat.(type) {
		case segment:
			if way := p.b.minus(p.a); turnOf(way, w.b.minus(w.a)) != 0 {
				list = append(list, point(p.toSegment(w).to))
			}
		case disc:
			list = append(list, w.chord(p))
		case region:
			list = append(list, w.within(p)...)
		}
	}
	return list
}

// chord is the part of a segment of the plan within a disc that it meets.
func (s segment) chord(d disc) segment {
	way, start := s.b.minus(s.a), d.centre.minus(s.a)
	length := way.length()
	middle, aside := start.dot(way)/length, turnOf(way, start)/length
	half := math.Sqrt(max(0, d.radius*d.radius-aside*aside))
	from, to := clamp((middle-half)/length, 0, 1), clamp((middle+half)/length, 0, 1)
	return segment{between(s.a, s.b, from), between(s.a, s.b, to)}
}

// within gives the parts of a segment of the plan that an area covers.
func (s segment) within(r region) []segment {
	cuts := []float64{0, 1}
	way := s.b.minus(s.a)
	for i := range r.corners {
		e := r.edge(i)
		if turn := turnOf(way, e.b.minus(e.a)); turn != 0 {
			cuts = append(cuts, clamp(turnOf(e.a.minus(s.a), e.b.minus(e.a))/turn, 0, 1))
		}
	}
	slices.Sort(cuts)
	var list []segment
	for i := range cuts[1:] {
		if from, to := cuts[i], cuts[i+1]; to > from && r.holds(between(s.a, s.b, (from+to)/2)) {
			list = append(list, segment{between(s.a, s.b, from), between(s.a, s.b, to)})
		}
	}
	return list
}
