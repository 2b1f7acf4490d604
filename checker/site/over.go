package site

import (
	"cmp"
	"math"
	"slices"
)

// over is the shortest string over the tops of walls that is shorter than a known
// one. Between the first wall and the last it runs straight through the air: what
// stands higher in between is not asked for.
func (b *building) over(from, to *end, known strand) strand {
	switch {
	case from.above && to.above:
		return straight(from, to, known)
	case to.above:
		return b.over(to, from, known.turned()).turned()
	case from.above:
		return b.down(from, to, known)
	}
	return b.across(from, to, known)
}

func straight(from, to *end, known strand) strand {
	if found := from.body.to(to.body); found.gap < known.length {
		return strand{found.gap, []vec{found.from, found.to}}
	}
	return known
}

func (s strand) turned() strand {
	path := slices.Clone(s.path)
	slices.Reverse(path)
	return strand{s.length, path}
}

// candidate is a course by way of two edges and a length that it is surely not
// below.
type candidate struct {
	least    float64
	from, to *edge
}

// down is the way from above the footprint over one wall.
func (b *building) down(from, to *end, known strand) strand {
	start := &edge{leg: leg{end: from, overAir: true}, wall: -1}
	var list []candidate
	edges := b.edges(to, known.length)
	for i := range edges {
		e := &edges[i]
		first := math.Hypot(from.flat.toSegment(b.walls[e.wall]).gap, max(0, b.tops[e.wall]-from.high))
		if least := first + e.whole; least < known.length {
			list = append(list, candidate{least, start, e})
		}
	}
	return b.best(list, known)
}

// across is the way up one wall and down another. Over one alone, it need not
// leave the plane of that wall.
func (b *building) across(from, to *end, known strand) strand {
	var list []candidate
	first, last := b.edges(from, known.length), b.edges(to, known.length)
	for i := range first {
		for k := range last {
			f, l := &first[i], &last[k]
			if f.wall == l.wall || f.whole+l.whole >= known.length {
				continue
			}
			gap, top := b.gaps[f.wall][l.wall], max(b.tops[f.wall], b.tops[l.wall])
			climb := max(0, top-from.high) + max(0, top-to.high)
			least := max(f.whole+gap+l.whole, math.Hypot(f.run+gap+l.run, climb))
			if least < known.length {
				list = append(list, candidate{least, f, l})
			}
		}
	}
	return b.best(list, known)
}

// best searches the courses in the order of their least lengths, until no other
// can be shorter.
func (b *building) best(list []candidate, known strand) strand {
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, k int) int { return cmp.Or(cmp.Compare(list[i].least, list[k].least), i-k) })
	for _, i := range order {
		if list[i].least >= known.length {
			break
		}
		known = b.search(b.courseOf(list[i]), known)
	}
	return known
}

func (b *building) courseOf(c candidate) course {
	var over []crossed
	for _, wall := range []int{c.from.wall, c.to.wall} {
		if wall >= 0 {
			over = append(over, crossed{b.walls[wall], b.tops[wall]})
		}
	}
	return newCourse(c.from.leg, c.to.leg, over...)
}

// search takes the string of a course if it stays outside and is shorter.
func (b *building) search(c course, known strand) strand {
	cut := c.cut[0] + c.cut[1]
	x, length := minimise(c.unknowns(), c.length, known.length+cut)
	if length-cut >= known.length || !c.isClear(b, x) {
		return known
	}
	return strand{length - cut, c.path(x)}
}
