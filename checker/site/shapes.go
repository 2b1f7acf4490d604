package site

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

// ball is a centre and a radius that hold all of a piece.
type ball struct {
	centre vec
	radius float64
}

func (s segment) ball() ball {
	return ball{between(s.a, s.b, 0.5), s.b.minus(s.a).length() / 2}
}

func (d disc) ball() ball { return ball{d.centre, d.radius} }

// apart is a length that the contents of two balls surely keep.
func (b ball) apart(c ball) float64 {
	return c.centre.minus(b.centre).length() - b.radius - c.radius
}
