package site

import "math"

// course is a string that ends in two legs and goes over the tops of walls
// between them: over one if it starts above the footprint, over two otherwise. The
// places where it crosses the walls, and where it ends on a disc, are the unknowns
// of a search.
//
// Its length is a convex function of them, so that what is best near by is best of
// all. For the way on the plan between two of its stations is a sum of lengths of
// vectors that change evenly with the unknowns, hence convex; the part of the
// string over it is the length of that way and of the rise, hence convex in both;
// and pulling the string tight takes the least sum of all parts over the heights at
// the walls, which stays convex.
//
// The search need not know whether the legs stay outside. The string that is truly
// the shortest is the best of its own course near by, so the best of that course;
// and if a corner touches a leg of it, it is as well the best of the course around
// that corner.
type course struct {
	from, to leg
	over     []crossed
	cut      [2]float64 // radius of a disc whose centre stands in for it, at both ends
}

// crossed is a wall that a string goes over.
type crossed struct {
	wall segment
	top  float64
}

func (c crossed) at(x float64) vec { return between(c.wall.a, c.wall.b, (1+x)/2) }
func (c crossed) half() vec        { return c.wall.b.minus(c.wall.a).times(0.5) }

// newCourse settles what need not be searched for.
func newCourse(from, to leg, over ...crossed) course {
	c := course{from: from, to: to, over: over}
	c.cut[0] = c.from.centred(over[0])
	c.cut[1] = c.to.centred(over[len(over)-1])
	if !c.from.end.round && !c.to.end.round {
		c.settleHeights()
	}
	return c
}

// centred puts the centre of a disc in its place where a string leaves it along
// its wall, and gives its radius. Such a string is part of the one from the centre.
func (l *leg) centred(first crossed) float64 {
	if !l.end.round {
		return 0
	}
	bulges := l.end.bulges(first.wall.a) || l.end.bulges(first.wall.b) || l.end.high > first.top
	if len(l.corners) > 0 {
		bulges = l.end.bulges(l.corners[0])
	}
	if bulges {
		return 0
	}
	radius := (l.end.high - l.end.low) / 2
	s := l.end.flat.(segment)
	z := (l.end.low + l.end.high) / 2
	l.end = &end{flat: point(between(s.a, s.b, 0.5)), low: z, high: z}
	return radius
}

// settleHeights chooses the heights of both ends. A string over walls is shortest
// when it comes as near as it can to being level with the highest of them, or
// with the other end where that is higher still.
func (c *course) settleHeights() {
	top := c.over[0].top
	for _, w := range c.over {
		top = max(top, w.top)
	}
	a, b := c.from.end, c.to.end
	from, to := clamp(max(top, b.low), a.low, a.high), clamp(max(top, a.low), b.low, b.high)
	c.from.end = &end{flat: a.flat, low: from, high: from}
	c.to.end = &end{flat: b.flat, low: to, high: to}
}

// layout splits the unknowns: those of both ends, and one for each wall.
func (c *course) layout(x []float64) (from, to, over []float64) {
	a, b := c.from.unknowns().size(), c.to.unknowns().size()
	return x[:a], x[a : a+b], x[a+b:]
}

func (c *course) unknowns() domain {
	d := append(c.from.unknowns(), c.to.unknowns()...)
	for range c.over {
		d = append(d, interval)
	}
	return d
}

// laid is a course with its unknowns filled in.
type laid struct {
	first, last vec // where it crosses the first and the last wall
	from, to    reached
	middle      vec // its direction from the one to the other
	profile     profile
}

func (c *course) lay(x []float64) laid {
	from, to, over := c.layout(x)
	end := len(c.over) - 1
	l := laid{first: c.over[0].at(over[0]), last: c.over[end].at(over[end])}
	l.from, l.to = c.from.reach(from, l.first), c.to.reach(to, l.last)
	z, _ := c.from.end.height(from)
	l.profile.add(0, z)
	l.profile.add(l.from.length, c.over[0].top)
	if end > 0 {
		var length float64
		length, l.middle = straightTo(l.first, l.last)
		l.profile.add(length, c.over[end].top)
	}
	z, _ = c.to.end.height(to)
	l.profile.add(l.to.length, z)
	return l
}

// length is that of the string for given unknowns; it writes how it grows with
// them.
func (c *course) length(x, slope []float64) float64 {
	clear(slope)
	l := c.lay(x)
	s := l.profile.pull()
	from, to, _ := c.layout(x)
	fromSlope, toSlope, overSlope := c.layout(slope)
	end := len(c.over) - 1
	first := c.from.grow(from, fromSlope, l.from, s.withWay[1], s.withStart)
	last := c.to.grow(to, toSlope, l.to, s.withWay[end+2], s.withEnd)
	middle := l.middle.times(s.withWay[2]) // none over one wall
	overSlope[0] = first.minus(middle).dot(c.over[0].half())
	overSlope[end] += last.plus(middle).dot(c.over[end].half())
	return s.length
}

func (c *course) isClear(b *building, x []float64) bool {
	from, to, _ := c.layout(x)
	l := c.lay(x)
	return c.from.isClear(b, from, l.first) && c.to.isClear(b, to, l.last)
}

// path draws the string in space.
func (c *course) path(x []float64) []vec {
	from, to, over := c.layout(x)
	l := c.lay(x)
	plan := c.from.places(from, l.first)
	for i, w := range c.over {
		plan = append(plan, w.at(over[i]))
	}
	back := c.to.places(to, l.last)
	for i := range back {
		plan = append(plan, back[len(back)-1-i])
	}
	path := hung(plan, &l.profile)
	trim(&path[0], path[1], c.cut[0])
	trim(&path[len(path)-1], path[len(path)-2], c.cut[1])
	return path
}

// trim moves the end of a path from the centre of a disc to its edge.
func trim(end *vec, next vec, radius float64) {
	way := next.minus(*end)
	if length := way.length(); length > 0 {
		*end = end.plusTimes(math.Min(radius/length, 1), way)
	}
}
