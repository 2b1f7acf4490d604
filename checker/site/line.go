package site

import "slices"

// line is the straight line between two things, and what a string around the
// building needs to know once the line runs through it.
type line struct {
	m           Measurement
	site        *Site
	first, last *place
	froms, tos  []end
	lowest      float64 // the low part of the building, below what stands above it
	outside     strand  // the shortest straight line outside
}

func (s *Site) line(a, b any) (line, error) {
	first, last, err := s.pair(a, b)
	if err != nil {
		return line{}, err
	}
	l := line{site: s, first: first, last: last}
	l.m, err = s.Measure(a, b)
	switch {
	case l.m.Stated != nil:
		return l, nil
	case first.isLine() && last.isLine(), first.wall != nil && first.wall == last.wall:
		l.m.Path = l.direct()
		return l, err
	}
	building := s.building()
	if err != nil || !building.plan.known() {
		return line{}, l.lacks(building)
	}
	if building.clear(vec(l.m.From).onPlan(), vec(l.m.To).onPlan()) {
		l.m.Path = l.direct()
		return l, nil
	}
	if err := l.lacks(building); err != nil {
		return line{}, err
	}
	l.look(building)
	return l, nil
}

// direct is the path of the straight line; none when it has no place.
func (l *line) direct() [][3]float64 {
	if !l.m.Placed {
		return nil
	}
	return bent([]vec{l.m.From, l.m.To})
}

// lacks names all that a string between the two things may need and the design
// does not give.
func (l *line) lacks(b *building) error {
	all := new(view)
	for _, v := range []*view{l.first.whole(), l.last.whole(), b.plan, b.heights} {
		all = all.and(v)
	}
	return all.problem()
}

// whole is the view in which a thing has its place in space.
func (p *place) whole() *view {
	if p.isLine() {
		return p.onSite(onPlan)
	}
	return p.onSite(inSpace)
}

// look takes both things apart and tells whether the building stands between
// their nearest edges.
func (l *line) look(b *building) {
	span := l.span(b)
	l.froms, l.tos = b.ends(l.first, span), b.ends(l.last, span)
	l.lowest = b.low
	for _, e := range slices.Concat(l.froms, l.tos) {
		if e.above {
			l.lowest = min(l.lowest, e.low)
		}
	}
	l.outside = l.straightest(b)
	l.m.Through = l.outside.length > float64(l.m.Length)+rounding
	if !l.m.Through {
		l.m.Path = bent(l.outside.path)
	}
}

// span is the heights between which a string can end at a line of the plan.
func (l *line) span(b *building) [2]float64 {
	low, high := slices.Min(b.tops), slices.Max(b.tops)
	for _, p := range []*place{l.first, l.last} {
		for _, part := range p.onSite(inSpace).shape {
			e := endOf(part)
			low, high = min(low, e.low), max(high, e.high)
		}
	}
	return [2]float64{low, high}
}

// straightest is the shortest straight line outside the building.
func (l *line) straightest(b *building) strand {
	best := noStrand
	for i := range l.froms {
		for k := range l.tos {
			if s := b.free(&l.froms[i], &l.tos[k], l.lowest); s.length < best.length {
				best = s
			}
		}
	}
	return best
}

// free is the straight line between two ends if the building does not stop it.
// Of upright sides that are nearest at many heights, it takes the highest.
func (b *building) free(from, to *end, lowest float64) strand {
	found := from.body.to(to.body)
	if found.from[2] == found.to[2] && !from.round && !to.round {
		high := min(from.high, to.high)
		found.from[2], found.to[2] = high, high
	}
	if b.stops(segment{found.from, found.to}, lowest) {
		return noStrand
	}
	return strand{found.gap, []vec{found.from, found.to}}
}
