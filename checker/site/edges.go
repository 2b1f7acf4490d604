package site

import (
	"cmp"
	"math"
	"slices"
)

// edge is a way from an end to the top of a wall.
type edge struct {
	leg   leg
	wall  int     // -1: to none, for a start above the footprint
	run   float64 // on the plan, at least
	whole float64 // length, at least
}

// edges are the walls that a string from an end may go over, with the ways to
// them that are shorter than a known string.
func (b *building) edges(e *end, known float64) []edge {
	var list []edge
	add := func(l leg, wall int) {
		run, climb := l.least(b.walls[wall]), max(0, b.tops[wall]-e.high)
		if whole := math.Hypot(run, climb); whole < known {
			list = append(list, edge{l, wall, run, whole})
		}
	}
	legs := b.legs(e)
	for i := range b.walls {
		if b.faces(i, foremost(e.flat, b.outward(i))) {
			add(leg{end: e}, i)
		}
		if b.carries(i, e) {
			continue // nothing stands between an end on a wall and the rest of that wall
		}
		for _, l := range legs {
			if b.faces(i, l.last()) {
				add(l, i)
			}
		}
	}
	return list
}

// legs are the ways from an end to the corners that it may reach: the shortest
// one to each, and from a disc, whose place is not known yet, each.
func (b *building) legs(e *end) []leg {
	var list []leg
	starts := b.starts(e)
	for k := range b.corners {
		best, length := -1, math.Inf(1)
		for _, s := range starts {
			way := b.ways.length[s.corner][k]
			if e.round && !math.IsInf(way, 1) {
				list = append(list, b.byWayOf(e, b.ways.along(s.corner, k)))
			}
			if s.run+way < length {
				best, length = s.corner, s.run+way
			}
		}
		if best >= 0 && !e.round {
			list = append(list, b.byWayOf(e, b.ways.along(best, k)))
		}
	}
	return list
}

func (b *building) byWayOf(e *end, corners []int) leg {
	l := leg{end: e, between: b.ways.length[corners[0]][corners[len(corners)-1]]}
	for _, k := range corners {
		l.corners = append(l.corners, b.corner(k))
	}
	return l
}

func (b *building) outward(wall int) vec {
	way := b.walls[wall].b.minus(b.walls[wall].a)
	return vec{way[1], -way[0], 0}
}

// carries tells whether an end lies on a wall.
func (b *building) carries(wall int, e *end) bool {
	s, isSegment := e.flat.(segment)
	w := b.walls[wall]
	return isSegment && w.toPoint(s.a).gap <= b.slack && w.toPoint(s.b).gap <= b.slack
}

// foremost is the point of a piece of the plan that lies farthest in a direction.
func foremost(p piece, towards vec) vec {
	switch p := p.(type) {
	case segment:
		_, far := p.extremes(towards)
		return far
	case disc:
		_, towards = straightTo(vec{}, towards)
		return p.centre.plusTimes(p.radius, towards)
	}
	return slices.MaxFunc(p.(region).corners, func(a, b vec) int { return cmp.Compare(a.dot(towards), b.dot(towards)) })
}
