package site

import (
	"math"

	"github.com/ventlint/ventlint/checker/roots"
)

// parallel is the sine of an angle below which directions count as parallel. It
// moves an edge at 1 m by 1e-13 m at most.
const parallel = 1e-13

// offset is where a point is, as seen from a disc.
type offset struct {
	above  float64 // over the plane of the disc, along its normal
	beyond float64 // past the rim, on the plane of the disc; 0 over the disc
	out    vec     // from the centre to the foot on that plane
}

func (d disc) offset(p vec) offset {
	way := p.minus(d.centre)
	above := way.dot(d.normal)
	out := way.plusTimes(-above, d.normal)
	return offset{above, max(0, out.length()-d.radius), out}
}

// rate is half the rate at which the square of the distance from the disc grows
// when the point moves. Taken from the parts of the distance, it keeps its sign
// where the distance itself is no larger than its rounding.
func (d disc) rate(p, motion vec) float64 {
	o := d.offset(p)
	rate := o.above * d.normal.dot(motion)
	if o.beyond > 0 {
		rate += o.beyond * o.out.dot(motion) / o.out.length()
	}
	return rate
}

func (d disc) toPoint(p vec) approach {
	o := d.offset(p)
	foot := d.centre.plus(o.out)
	if o.beyond > 0 {
		foot = d.centre.plusTimes(d.radius/o.out.length(), o.out)
	}
	return approach{foot, p, math.Hypot(o.above, o.beyond)}
}

// extremes are the points of the disc that lie lowest and highest along a
// direction; its centre when all lie alike.
func (d disc) extremes(direction vec) (low, high vec) {
	turn := d.normal.turn(direction)
	slope := turn.plusTimes(-turn.dot(d.normal), d.normal)
	steepness := slope.length()
	if steepness < parallel {
		return d.centre, d.centre
	}
	out := slope.times(d.radius / steepness)
	return d.centre.minus(out), d.centre.plus(out)
}

// toDisc follows the segment to the point whose distance from the disc is
// least: the distance from a disc is a convex function along a line.
func (s segment) toDisc(d disc) approach {
	way := s.b.minus(s.a)
	if math.Abs(way.dot(d.normal)) <= parallel*way.length() {
		return d.toPoint(s.foot(d.centre)).swapped()
	}
	slope := func(t float64) float64 { return d.rate(s.a.plusTimes(t, way), way) }
	start, end := roots.At(slope, 0), roots.At(slope, 1)
	switch {
	case start.Y >= 0:
		return d.toPoint(s.a).swapped()
	case end.Y <= 0:
		return d.toPoint(s.b).swapped()
	}
	t, _ := roots.Find(slope, start, end, roots.Finest)
	return d.toPoint(s.a.plusTimes(t, way)).swapped()
}

func (d disc) toDisc(other disc) approach {
	if across := d.normal.across(other.normal); across.length() >= parallel {
		return newCrossing(d, other, across.times(1/across.length())).nearest()
	}
	return d.toParallel(other)
}

// toParallel measures along the line between the two centres as the first disc
// sees it on its plane: there the discs are the spans [-r, r] and [d-r, d+r].
func (d disc) toParallel(other disc) approach {
	way := other.centre.minus(d.centre)
	rise := d.normal.times(way.dot(d.normal))
	out := way.minus(rise)
	distance := out.length()
	if distance == 0 {
		return approach{d.centre, other.centre, rise.length()}
	}
	out = out.times(1 / distance)
	edge, otherEdge := d.radius, distance-other.radius
	if edge >= otherEdge { // one above the other: take the middle of what they share
		edge = (max(-d.radius, otherEdge) + min(d.radius, distance+other.radius)) / 2
		otherEdge = edge
	}
	from := d.centre.plusTimes(edge, out)
	to := d.centre.plusTimes(otherEdge, out).plus(rise)
	return approach{from, to, math.Hypot(rise.length(), otherEdge-edge)}
}
