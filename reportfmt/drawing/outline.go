package drawing

import "math"

// spot is a point of a drawing, in metres: along and up a wall, or x and y of
// the plan.
type spot struct{ x, y float64 }

func (a spot) plus(k float64, b spot) spot { return spot{a.x + k*b.x, a.y + k*b.y} }
func (a spot) to(b spot) spot              { return spot{b.x - a.x, b.y - a.y} }
func (a spot) length() float64             { return math.Hypot(a.x, a.y) }

// unit is the direction of a way; along x where it has no length.
func (a spot) unit() spot {
	if l := a.length(); l > 0 {
		return spot{a.x / l, a.y / l}
	}
	return spot{1, 0}
}

func middle(a, b spot) spot { return spot{(a.x + b.x) / 2, (a.y + b.y) / 2} }

// outline is the shape of a thing in a drawing: a disc, a rectangle with upright
// sides, or a straight line.
type outline struct {
	centre spot
	w, h   float64
	round  bool
	line   bool
	a, b   spot // ends of a line
}

// box is an upright rectangle, in metres or in pixels.
type box struct{ x0, y0, x1, y1 float64 }

var nowhere = box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}

func (b box) empty() bool { return b.x0 > b.x1 || b.y0 > b.y1 }

func (b box) with(points ...spot) box {
	for _, p := range points {
		b = box{min(b.x0, p.x), min(b.y0, p.y), max(b.x1, p.x), max(b.y1, p.y)}
	}
	return b
}

func (b box) grown(by float64) box { return box{b.x0 - by, b.y0 - by, b.x1 + by, b.y1 + by} }

func (b box) holds(p spot) bool { return b.x0 <= p.x && p.x <= b.x1 && b.y0 <= p.y && p.y <= b.y1 }

// nearest is the point of a box that is nearest to a point.
func (b box) nearest(p spot) spot {
	return spot{min(max(p.x, b.x0), b.x1), min(max(p.y, b.y0), b.y1)}
}

// reaching is a box with those points within it that lie no farther than a
// distance, and its farthest points toward the others.
func (b box) reaching(far float64, points []spot) box {
	limit, all := b.grown(far), b
	for _, p := range points {
		all = all.with(limit.nearest(p))
	}
	return all
}

// bounds is the box around an outline.
func (o outline) bounds() box {
	if o.line {
		return nowhere.with(o.a, o.b)
	}
	return box{o.centre.x - o.w/2, o.centre.y - o.h/2, o.centre.x + o.w/2, o.centre.y + o.h/2}
}
