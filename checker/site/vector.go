package site

import "math"

// vec is a point of the site, or a way between two, in metres.
type vec [3]float64

var up = vec{0, 0, 1}

func (a vec) plus(b vec) vec                 { return vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func (a vec) minus(b vec) vec                { return vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func (a vec) times(k float64) vec            { return vec{k * a[0], k * a[1], k * a[2]} }
func (a vec) plusTimes(k float64, b vec) vec { return a.plus(b.times(k)) }
func (a vec) dot(b vec) float64              { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a vec) length() float64                { return math.Sqrt(a.dot(a)) }

func (a vec) cross(b vec) vec {
	return vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// across is the cross product of two directions of length 1. It takes the
// difference first, which is exact, so that directions that are almost alike or
// opposite keep all digits.
func (a vec) across(b vec) vec { return a.cross(a.turn(b)) }

// turn is what a direction lacks to another one, or to its opposite.
func (a vec) turn(b vec) vec {
	if a.dot(b) < 0 {
		return b.plus(a)
	}
	return b.minus(a)
}

// turnOf is positive where the way b turns left from a, on the plan.
func turnOf(a, b vec) float64 { return a[0]*b[1] - a[1]*b[0] }

// onPlan is the place of a point on the plan.
func (a vec) onPlan() vec { return vec{a[0], a[1], 0} }

// between is the point at share t of the way from a to b.
func between(a, b vec, t float64) vec { return a.plusTimes(t, b.minus(a)) }

func clamp(x, low, high float64) float64 { return max(low, min(x, high)) }

func lower(a, b vec) vec { return vec{min(a[0], b[0]), min(a[1], b[1]), min(a[2], b[2])} }
func upper(a, b vec) vec { return vec{max(a[0], b[0]), max(a[1], b[1]), max(a[2], b[2])} }
