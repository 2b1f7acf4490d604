package site

import "math"

// parallel is the sine of an angle below which two planes count as parallel: on
// a disc of 1 m radius it moves an edge by less than 1e-8 m.
const parallel = 1e-8

// rounding is the sine of an angle below which a segment counts as parallel to a
// plane. A steeper one is followed step by step.
const rounding = 1e-14

func (d disc) toPoint(p vec) approach {
	above := p.minus(d.center).dot(d.normal)
	foot := p.plusTimes(-above, d.normal)
	out := foot.minus(d.center)
	distance := out.length()
	if distance <= d.radius {
		return approach{foot, p, math.Abs(above)}
	}
	rim := d.center.plusTimes(d.radius/distance, out)
	return approach{rim, p, math.Hypot(above, distance-d.radius)}
}

// extremes are the points of the disc that lie lowest and highest along a
// direction; its center when all lie alike.
func (d disc) extremes(direction vec) (low, high vec) {
	slope := direction.plusTimes(-direction.dot(d.normal), d.normal)
	steepness := slope.length()
	if steepness < parallel {
		return d.center, d.center
	}
	out := slope.times(d.radius / steepness)
	return d.center.minus(out), d.center.plus(out)
}

// toDisc follows the segment to the point whose distance from the disc is
// least. The distance from a convex body is a convex function along a line, and
// its slope is the way to the nearest point of the body, projected on the line.
func (s segment) toDisc(d disc) approach {
	way := s.b.minus(s.a)
	if math.Abs(way.dot(d.normal)) <= rounding*way.length() {
		return d.toPoint(s.foot(d.center)).swapped()
	}
	slope := func(t float64) float64 {
		at := d.toPoint(s.a.plusTimes(t, way))
		return at.to.minus(at.from).dot(way)
	}
	switch {
	case slope(0) >= 0:
		return d.toPoint(s.a).swapped()
	case slope(1) <= 0:
		return d.toPoint(s.b).swapped()
	}
	return d.toPoint(s.a.plusTimes(turningPoint(0, 1, slope), way)).swapped()
}

func (d disc) toDisc(other disc) approach {
	if across := d.normal.cross(other.normal); across.length() >= parallel {
		return newCrossing(d, other, across.times(1/across.length())).nearest()
	}
	return d.toParallel(other)
}

// toParallel measures along the line between the two centers as the first disc
// sees it on its plane: there the discs are the spans [-r, r] and [d-r, d+r].
func (d disc) toParallel(other disc) approach {
	way := other.center.minus(d.center)
	rise := d.normal.times(way.dot(d.normal))
	out := way.minus(rise)
	distance := out.length()
	if distance == 0 {
		return approach{d.center, other.center, rise.length()}
	}
	out = out.times(1 / distance)
	edge, otherEdge := d.radius, distance-other.radius
	if edge >= otherEdge { // one above the other: take the middle of what they share
		edge = (max(-d.radius, otherEdge) + min(d.radius, distance+other.radius)) / 2
		otherEdge = edge
	}
	from := d.center.plusTimes(edge, out)
	to := d.center.plusTimes(otherEdge, out).plus(rise)
	return approach{from, to, math.Hypot(rise.length(), otherEdge-edge)}
}
