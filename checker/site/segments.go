package site

// foot is the point of the segment nearest to p.
func (s segment) foot(p vec) vec {
	way := s.b.minus(s.a)
	square := way.dot(way)
	if square == 0 {
		return s.a
	}
	t := p.minus(s.a).dot(way) / square
	switch {
	case t <= 0:
		return s.a
	case t >= 1:
		return s.b
	}
	return s.a.plusTimes(t, way)
}

func (s segment) toPoint(p vec) approach {
	foot := s.foot(p)
	return approach{foot, p, p.minus(foot).length()}
}

// toSegment takes the nearest of the four ends, each against the whole other
// segment, and of the place where the two lines pass each other.
func (s segment) toSegment(other segment) approach {
	best := nearer(s.toPoint(other.a), s.toPoint(other.b))
	best = nearer(best, other.toPoint(s.a).swapped())
	best = nearer(best, other.toPoint(s.b).swapped())
	if best.gap == 0 {
		return best
	}
	return nearer(best, s.pass(other))
}

// pass is where the lines of two segments pass each other, if that lies within
// both. The cross product keeps it exact for lines that are almost parallel,
// where the usual difference of products loses all digits.
func (s segment) pass(other segment) approach {
	way, otherWay := s.b.minus(s.a), other.b.minus(other.a)
	normal := way.cross(otherWay)
	square := normal.dot(normal)
	if square == 0 {
		return nowhere
	}
	start := other.a.minus(s.a)
	t := start.cross(otherWay).dot(normal) / square
	u := start.cross(way).dot(normal) / square
	if !(t >= 0 && t <= 1 && u >= 0 && u <= 1) {
		return nowhere
	}
	p, q := s.a.plusTimes(t, way), other.a.plusTimes(u, otherWay)
	return approach{p, q, q.minus(p).length()}
}
