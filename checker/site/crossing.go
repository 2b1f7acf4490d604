package site

import (
	"math"

	"github.com/ventlint/ventlint/checker/roots"
)

// crossing is two discs in planes that meet. Both planes hold the direction of
// their common line. A point of the first disc is given by s along that
// direction and t square to it; the height above the second plane depends on t
// alone, so the best s for a given t is known in closed form, and what is left
// is a convex function of t.
type crossing struct {
	first, second disc
	common        vec // direction of the common line, length 1
	square        vec // square to it in the first plane, length 1

	start     float64 // s of the second centre
	height    float64 // of the first centre above the second plane
	climb     float64 // of that height with t
	aside     float64 // first centre from the second, square to the common line, in the second plane
	asideRate float64 // of that with t
}

func newCrossing(first, second disc, common vec) crossing {
	square := first.normal.cross(common)
	secondSquare := second.normal.cross(common)
	way := first.centre.minus(second.centre)
	return crossing{
		first: first, second: second, common: common, square: square,
		start:     -way.dot(common),
		height:    way.dot(second.normal),
		climb:     square.dot(second.normal),
		aside:     way.dot(secondSquare),
		asideRate: square.dot(secondSquare),
	}
}

// nearest turns t into the radius times the sine of an angle, which keeps the
// slope finite at the rim.
func (c crossing) nearest() approach {
	slope := c.slope
	angle, _ := roots.Find(slope, roots.At(slope, -math.Pi/2), roots.At(slope, math.Pi/2), roots.Finest)
	s, t := c.best(math.Sincos(angle))
	p := c.first.centre.plusTimes(s, c.common).plusTimes(t, c.square)
	return c.second.toPoint(p).swapped()
}

// best is the point of the first disc nearest to the second among those at one
// angle.
func (c crossing) best(sin, cos float64) (s, t float64) {
	half := c.first.radius * cos
	return clamp(c.start, -half, half), c.first.radius * sin
}

// slope is half the rate at which the square of the distance grows with the
// angle.
func (c crossing) slope(angle float64) float64 {
	sin, cos := math.Sincos(angle)
	s, t := c.best(sin, cos)
	rate := (c.height + t*c.climb) * c.climb * c.first.radius * cos
	along, aside := s-c.start, c.aside+t*c.asideRate
	distance := math.Hypot(along, aside)
	beyond := distance - c.second.radius
	if beyond <= 0 {
		return rate
	}
	rate += beyond * aside / distance * c.asideRate * c.first.radius * cos
	if along != 0 { // held at the rim, which moves with the angle
		rate += beyond * along / distance * t * math.Copysign(1, along)
	}
	return rate
}
