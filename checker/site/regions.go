package site

import "math"

// convex is a piece without hollows.
type convex interface {
	extremes(direction vec) (low, high vec)
	box() box
	toSegment(segment) approach
}

func (r region) toSegment(s segment) approach { return fromRegion(r, s, nowhere) }
func (r region) toDisc(d disc) approach       { return fromRegion(r, d, nowhere) }

// fromRegion gives where a piece comes nearest to the region, or an approach that is
// known already and no farther. It looks at the point of the piece that comes nearest
// to the plane of the region. Above the region, no other point can be nearer;
// otherwise the nearest point of the region lies on its outline.
func fromRegion[K convex](r region, k K, best approach) approach {
	p := nearPlane(r, k)
	above := p.minus(r.corners[0]).dot(r.normal)
	if foot := p.plusTimes(-above, r.normal); r.holds(foot) {
		return nearer(best, approach{foot, p, math.Abs(above)})
	}
	body := k.box()
	for i := range r.corners {
		edge := r.edge(i)
		if edge.box().apart(body) < best.gap {
			best = nearer(best, k.toSegment(edge).swapped())
		}
	}
	return best
}

// toRegion needs only the outlines: two flat areas that meet do so at the
// outline of one of them, and the nearest points of two that do not can be moved
// there.
func (r region) toRegion(other region) approach {
	best := r.toOutline(other, nowhere).swapped()
	return other.toOutline(r, best).swapped()
}

// toOutline gives where the outline of another region comes nearest to the region, or
// an approach that is known already and no farther.
func (r region) toOutline(other region, best approach) approach {
	body := r.box()
	for i := range other.corners {
		if edge := other.edge(i); edge.box().apart(body) < best.gap {
			best = fromRegion(r, edge, best)
		}
	}
	return best
}

// nearPlane is a point of the piece nearest to the plane of the region.
func nearPlane[K convex](r region, k K) vec {
	low, high := k.extremes(r.normal)
	bottom := low.minus(r.corners[0]).dot(r.normal)
	top := high.minus(r.corners[0]).dot(r.normal)
	switch {
	case bottom >= 0 || bottom == top:
		return low
	case top <= 0:
		return high
	}
	return between(low, high, bottom/(bottom-top))
}

func (s segment) extremes(direction vec) (low, high vec) {
	if s.a.dot(direction) <= s.b.dot(direction) {
		return s.a, s.b
	}
	return s.b, s.a
}

// holds tells whether a point of the plane lies inside the outline: whether the
// outline winds around it. A part that the outline winds around twice is inside.
func (r region) holds(p vec) bool {
	x, y := r.shadow()
	turns := 0
	for i := range r.corners {
		e := r.edge(i)
		left := (e.b[x]-e.a[x])*(p[y]-e.a[y]) - (p[x]-e.a[x])*(e.b[y]-e.a[y])
		switch {
		case e.a[y] <= p[y] && e.b[y] > p[y] && left > 0:
			turns++
		case e.a[y] > p[y] && e.b[y] <= p[y] && left < 0:
			turns--
		}
	}
	return turns != 0
}

// shadow gives the two axes on which the region casts its largest shadow.
func (r region) shadow() (x, y int) {
	n := vec{math.Abs(r.normal[0]), math.Abs(r.normal[1]), math.Abs(r.normal[2])}
	switch {
	case n[2] >= n[0] && n[2] >= n[1]:
		return 0, 1
	case n[0] >= n[1]:
		return 1, 2
	}
	return 2, 0
}
