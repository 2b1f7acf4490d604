package site

// leg is the part of a string on the plan between one of its ends and a place
// further on: straight, or around corners.
type leg struct {
	end     *end
	corners []vec   // that it bends at, from the end on
	between float64 // its length from the first of them to the last
	overAir bool    // it starts over the footprint, so that no wall is in its way
}

// reached is a place at which a leg arrives.
type reached struct {
	length   float64 // of the leg on the plan
	arriving vec     // the direction in which it does
	rate     float64 // of the length with the place on a disc
}

// last is the corner that the leg goes on from, if it bends.
func (l leg) last() vec { return l.corners[len(l.corners)-1] }

// unknowns are what is to be found of the end: the place on a disc, or the height
// on an upright side.
func (l leg) unknowns() domain {
	switch {
	case l.end.round:
		return domain{unitDisc}
	case l.end.low < l.end.high:
		return domain{interval}
	}
	return nil
}

// height is where the string ends for given unknowns, and how that grows with the
// last of them.
func (e *end) height(x []float64) (z, rate float64) {
	if len(x) == 0 {
		return e.low, 0
	}
	rate = (e.high - e.low) / 2
	return (e.low+e.high)/2 + rate*x[len(x)-1], rate
}

// point is the place on the plan where a string to p ends, for given unknowns.
func (e *end) point(x []float64, p vec) vec {
	if e.round {
		s := e.flat.(segment)
		return between(s.a, s.b, (1+x[0])/2)
	}
	return footOn(e.flat, p)
}

// footOn is the place of a piece of the plan that is nearest to a point.
func footOn(flat piece, p vec) vec {
	if s, isSegment := flat.(segment); isSegment {
		return s.foot(p)
	}
	return flat.toSegment(point(p)).from
}

// reach follows the leg to a place, for given unknowns.
func (l leg) reach(x []float64, to vec) reached {
	first := to
	if len(l.corners) > 0 {
		first = l.corners[0]
	}
	var r reached
	r.length, r.arriving = straightTo(l.end.point(x, first), first)
	if l.end.round {
		s := l.end.flat.(segment)
		r.rate = -r.arriving.dot(s.b.minus(s.a)) / 2
	}
	if len(l.corners) > 0 {
		length, arriving := straightTo(l.last(), to)
		r.length, r.arriving = r.length+l.between+length, arriving
	}
	return r
}

// straightTo is the length and the direction of a way. One that is no longer than
// its rounding has no direction: it would lead a search astray, while none leaves a
// slope that is right but for that rounding.
func straightTo(from, to vec) (float64, vec) {
	way := to.minus(from)
	length := way.length()
	if length <= rounding {
		return length, vec{}
	}
	return length, way.times(1 / length)
}

// grow writes how a string grows with the unknowns of the end, and gives how it
// grows with the place that the leg reaches.
func (l leg) grow(x, slope []float64, r reached, withWay, withHeight float64) vec {
	if l.end.round {
		slope[0] = withWay * r.rate
	}
	if len(x) > 0 {
		_, climb := l.end.height(x)
		slope[len(x)-1] = withHeight * climb
	}
	return r.arriving.times(withWay)
}

// least is a length that the leg is surely not below on its way to a wall.
func (l leg) least(wall segment) float64 {
	if len(l.corners) == 0 {
		return l.end.flat.toSegment(wall).gap
	}
	return l.end.flat.toSegment(point(l.corners[0])).gap + l.between + wall.toPoint(l.last()).gap
}

// places are where the leg starts and where it bends, on its way to a place.
func (l leg) places(x []float64, to vec) []vec {
	if len(l.corners) > 0 {
		to = l.corners[0]
	}
	return append([]vec{l.end.point(x, to)}, l.corners...)
}

// isClear tells whether the leg stays outside the footprint on its straight
// parts: as far as its first corner, and from its last one.
func (l leg) isClear(b *building, x []float64, to vec) bool {
	switch {
	case l.overAir:
		return true
	case len(l.corners) == 0:
		return b.clear(l.end.point(x, to), to)
	}
	return b.clear(l.end.point(x, l.corners[0]), l.corners[0]) && b.clear(l.last(), to)
}
