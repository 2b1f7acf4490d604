package site

import "github.com/ventlint/ventlint/checker/design"

// frame is where the plane of a wall stands: the foot of its left end, as seen
// from outside, and the ways to the right and out.
type frame struct{ origin, right, outward vec }

// alone is the frame of a wall by itself. What stands on one wall can be
// measured in its plane, wherever on the site the wall stands.
var alone = frame{right: vec{1, 0, 0}, outward: vec{0, -1, 0}}

// at is the point of the wall at a place from its left end and above its grade.
func (f frame) at(fromLeft, aboveGrade float64) vec {
	return f.origin.plusTimes(fromLeft, f.right).plusTimes(aboveGrade, up)
}

// frame reads what an aspect needs of the wall that a thing stands on.
func (r *reading) frame(p *place, a aspect) frame {
	if p.wall == nil {
		r.miss(p.thing, "wall")
		return alone
	}
	f := alone
	if a != inHeight {
		f = r.onPlan(p.wall)
	}
	if a != onPlan {
		f.origin[2] = r.length(p.wall, "grade", p.wall.Grade)
	}
	return f
}

func (r *reading) onPlan(w *design.Wall) frame {
	from, to := r.point(w, "from", w.From, 0), r.point(w, "to", w.To, 0)
	if w.From == nil || w.To == nil {
		return alone
	}
	way := to.minus(from)
	length := way.length()
	if length == 0 {
		r.fail("%s has no length, expected two different points", design.Label(w))
		return alone
	}
	right := way.times(1 / length)
	return frame{origin: from, right: right, outward: vec{right[1], -right[0], 0}}
}

// highestGrade is the highest finished ground along the footprint.
func (r *reading) highestGrade(d *design.Design) float64 {
	if len(d.Walls) == 0 {
		r.miss(d, "wall")
		return 0
	}
	highest := -farthest
	for _, w := range d.Walls {
		highest = max(highest, r.length(w, "grade", w.Grade))
	}
	return highest
}
