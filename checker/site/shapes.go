package site

import "math"

// shape is where a thing is: one or more pieces.
type shape []piece

// piece is a part of a shape: a segment, a disc or a flat region. Each kind
// knows the way to the other kinds, so that any two pieces can be measured.
type piece interface {
	to(other piece) approach
	toSegment(segment) approach
	toDisc(disc) approach
	toRegion(region) approach
}

// segment is a straight line between two points; a point when they are one.
type segment struct{ a, b vec }

// disc is a flat round area. Its normal has length 1.
type disc struct {
	centre, normal vec
	radius         float64
}

// region is a flat area within a closed outline, which need not be convex. Its
// normal has length 1.
type region struct {
	corners []vec
	normal  vec
}

func point(p vec) segment { return segment{p, p} }

// rectangle spans the given half sides about its centre.
func rectangle(centre, across, along, normal vec) region {
	return region{
		corners: []vec{
			centre.minus(across).minus(along),
			centre.plus(across).minus(along),
			centre.plus(across).plus(along),
			centre.minus(across).plus(along),
		},
		normal: normal,
	}
}

// edge is the side of the outline that ends at corner i.
func (r region) edge(i int) segment {
	if i == 0 {
		return segment{r.corners[len(r.corners)-1], r.corners[0]}
	}
	return segment{r.corners[i-1], r.corners[i]}
}

// box is the least box along the axes that holds all of a piece.
type box struct{ low, high vec }

func (s segment) box() box { return box{lower(s.a, s.b), upper(s.a, s.b)} }

func (d disc) box() box {
	n := d.normal
	reach := vec{math.Hypot(n[1], n[2]), math.Hypot(n[2], n[0]), math.Hypot(n[0], n[1])}.times(d.radius)
	return box{d.centre.minus(reach), d.centre.plus(reach)}
}

func (r region) box() box {
	b := box{r.corners[0], r.corners[0]}
	for _, c := range r.corners[1:] {
		b.low, b.high = lower(b.low, c), upper(b.high, c)
	}
	return b
}

// apart is a length that the contents of two boxes surely keep.
func (b box) apart(c box) float64 {
	var way vec
	for i := range way {
		way[i] = max(0, b.low[i]-c.high[i], c.low[i]-b.high[i])
	}
	return way.length()
}
