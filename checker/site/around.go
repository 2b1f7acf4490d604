package site

import "math"

// strand is a string between two ends.
type strand struct {
	length float64
	path   []vec
}

var noStrand = strand{length: math.Inf(1)}

// start is a corner that a string reaches first from one of its ends.
type start struct {
	corner int
	run    float64 // on the plan, at least
}

// starts are the corners that an end may see. A string leaves anything but an
// upright disc at the place nearest on the plan, whatever it does further on, so
// that the sight can be told at once.
func (b *building) starts(e *end) []start {
	var list []start
	for k := range b.corners {
		c := b.corner(k)
		nearest := e.flat.toSegment(point(c))
		if e.outward.dot(c.minus(nearest.from)) >= -b.slack && (e.round || b.clear(nearest.from, c)) {
			list = append(list, start{k, nearest.gap})
		}
	}
	return list
}

// around is the shortest string around corners that is shorter than a known one.
// Its walls can be laid flat, with the air between them: there the string is a
// straight line, as long as on the plan one way and as high as it climbs the
// other.
func (b *building) around(from, to *end, known strand) strand {
	climb := max(0, from.low-to.high, to.low-from.high)
	last := b.starts(to)
	for _, s := range b.starts(from) {
		for _, t := range last {
			way := b.ways.length[s.corner][t.corner]
			if math.Hypot(s.run+way+t.run, climb) < known.length {
				known = b.shorter(known, from, to, s.corner, t.corner)
			}
		}
	}
	return known
}

// shorter takes the string by way of two corners if it is shorter.
func (b *building) shorter(known strand, from, to *end, first, last int) strand {
	corners, length := b.ways.along(first, last), b.ways.length[first][last]
	a, z := b.corner(first), b.corner(last)
	if from.bulges(a) || to.bulges(z) {
		turn := crossed{segment{z, z}, min(from.low, to.low) - 1} // too low to hold the string up
		return b.search(newCourse(b.byWayOf(from, corners), leg{end: to}, turn), known)
	}
	found := from.laidFlat(a, -1, 0).to(to.laidFlat(z, 1, length))
	if found.gap >= known.length {
		return known
	}
	x, y := from.standing(found.from, a, 0), to.standing(found.to, z, length)
	if !b.clear(x.onPlan(), a) || !b.clear(z, y.onPlan()) {
		return known
	}
	return strand{found.gap, b.strung(x, corners, y)}
}

// bulges tells whether an end cannot be laid flat beside a corner as what it is:
// a disc on a wall that the corner does not lie in line with, or one that reaches
// beyond the corner.
func (e *end) bulges(corner vec) bool {
	if !e.round {
		return false
	}
	s := e.flat.(segment)
	length, way := straightTo(s.a, s.b)
	away := corner.minus(between(s.a, s.b, 0.5)).length()
	return math.Abs(turnOf(way, corner.minus(s.a))) > joint*joint || away < length/2
}

// laidFlat is an end in the plane of the walls laid flat: x is the way on the plan
// from the first corner, less than 0 on the one side of it.
func (e *end) laidFlat(corner vec, side, further float64) piece {
	if !e.round {
		x := side * (further + e.flat.toSegment(point(corner)).gap)
		return segment{vec{x, 0, e.low}, vec{x, 0, e.high}}
	}
	s := e.flat.(segment)
	middle := between(s.a, s.b, 0.5)
	x := side * (further + corner.minus(middle).length())
	return disc{vec{x, 0, (e.low + e.high) / 2}, vec{0, 1, 0}, (e.high - e.low) / 2}
}

// standing is the place in space of a point of the end laid flat.
func (e *end) standing(p, corner vec, further float64) vec {
	if !e.round {
		return e.flat.toSegment(point(corner)).from.plusTimes(p[2], up)
	}
	s := e.flat.(segment)
	_, away := straightTo(corner, between(s.a, s.b, 0.5))
	return corner.plusTimes(math.Abs(p[0])-further, away).plusTimes(p[2], up)
}

// strung leads a string from one place around corners to another.
func (b *building) strung(from vec, corners []int, to vec) []vec {
	plan, length := []vec{from}, 0.0
	for _, k := range corners {
		plan = append(plan, b.corner(k))
	}
	plan = append(plan, to)
	for i := range plan[1:] {
		length += plan[i+1].onPlan().minus(plan[i].onPlan()).length()
	}
	var p profile
	p.add(0, from[2])
	p.add(length, to[2])
	return hung(plan, &p)
}
