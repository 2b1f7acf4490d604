package site

import (
	"math"

	"github.com/ventlint/ventlint/checker/design"
)

// building is the solid that a string stays outside of: what the walls enclose,
// from below up to the lowest wall top, and each wall by itself up to its own
// top, without thickness. Whatever its roof, a house with these walls holds this
// solid, so that a string around the solid is never longer than one around the
// house.
type building struct {
	area  region      // the footprint on the plan, counter-clockwise
	walls []segment   // wall i runs from corner i to the next one
	tops  []float64   // of the walls
	low   float64     // the lowest top
	slack float64     // how deep inside still counts as the surface
	gaps  [][]float64 // between walls, on the plan

	corners []int // of the footprint at which a string can bend
	ways    ways  // between these corners

	plan    *view // what of the plan is not known
	heights *view // what of the tops is not known
}

const (
	mostCorners = 200  // of a footprint; the ways between corners take the cube of it
	joint       = 0.01 // the gap up to which two walls meet, as in a design
	rounding    = 1e-9 // of a length, in metres

	// skin is the depth inside that counts as the surface of exact walls. The place
	// where two things are nearest is known to the square root of the rounding of
	// their distance only. A string that dips so deep is too short by about the square
	// of that depth over its length; by some times the depth where it ends no farther
	// than that from a corner.
	skin = 1e-6
)

func newBuilding(d *design.Design) *building {
	b := &building{low: farthest}
	var plan, heights reading
	for _, w := range d.Walls {
		b.area.corners = append(b.area.corners, plan.onPlan(w).origin)
		top := heights.length(w, "grade", w.Grade) + heights.length(w, "height", w.Height)
		b.tops = append(b.tops, top)
		b.low = min(b.low, top)
	}
	if len(d.Walls) == 0 {
		plan.miss(d, "wall")
	}
	if plan.err == nil && len(plan.missing) == 0 {
		b.close(&plan, d.Walls)
	}
	b.plan, b.heights = plan.view(nil), heights.view(nil)
	return b
}

// close makes the footprint of walls that stand in order around it.
func (b *building) close(r *reading, walls []*design.Wall) {
	n := len(walls)
	switch {
	case n < 3:
		r.fail("the footprint has %d walls, expected 3 or more that close", n)
		return
	case n > mostCorners:
		r.fail("the footprint has %d walls, expected at most %d to lead a string around", n, mostCorners)
		return
	}
	b.area.normal = up
	gap, reach := 0.0, 0.0
	for i, w := range walls {
		end, next := r.point(w, "to", w.To, 0), (i+1)%n
		apart := end.minus(b.area.corners[next]).length()
		if apart > joint {
			r.fail("the footprint does not close: %s ends %.3g m from where %s begins", design.Label(w), apart, design.Label(walls[next]))
			return
		}
		gap, reach = max(gap, apart), max(reach, end.length())
		b.walls = append(b.walls, segment{b.area.corners[i], b.area.corners[next]})
	}
	b.slack = gap + skin + reach*1e-13
	if b.winding() < 0 {
		r.fail("the walls run clockwise seen from above, expected counter-clockwise")
		return
	}
	b.findGaps()
	if i, k, meet := b.meeting(); meet {
		r.fail("%s crosses or touches %s, expected walls that meet at their ends only", design.Label(walls[i]), design.Label(walls[k]))
		return
	}
	b.findCorners()
}

func (b *building) findGaps() {
	for _, w := range b.walls {
		gaps := make([]float64, len(b.walls))
		for i, other := range b.walls {
			gaps[i] = w.toSegment(other).gap
		}
		b.gaps = append(b.gaps, gaps)
	}
}

// meeting finds two walls that share more than a corner.
func (b *building) meeting() (first, second int, found bool) {
	n := len(b.walls)
	for i, w := range b.walls {
		next := b.walls[(i+1)%n]
		if w.toPoint(next.b).gap <= rounding || next.toPoint(w.a).gap <= rounding {
			return i, (i + 1) % n, true // one folds back over the other
		}
		for k := range i {
			if beside := k == i-1 || k == 0 && i == n-1; !beside && b.gaps[i][k] <= rounding {
				return i, k, true
			}
		}
	}
	return 0, 0, false
}

// winding is twice the area of the footprint, less than zero where its walls run
// clockwise.
func (b *building) winding() float64 {
	sum, start := 0.0, b.walls[0].a
	for _, w := range b.walls {
		sum += turnOf(w.a.minus(start), w.b.minus(start))
	}
	return sum
}

// findCorners keeps the corners that stick out: a tight string bends around no
// other.
func (b *building) findCorners() {
	for i, w := range b.walls {
		before := b.walls[(i+len(b.walls)-1)%len(b.walls)]
		in, out := before.b.minus(before.a), w.b.minus(w.a)
		if turnOf(in, out) > parallel*in.length()*out.length() {
			b.corners = append(b.corners, i)
		}
	}
	b.ways = b.findWays()
}

// corner is where the k-th corner that a string can bend at stands.
func (b *building) corner(k int) vec { return b.area.corners[b.corners[k]] }

// faces tells whether a point lies on the outer side of a wall, or in its plane.
func (b *building) faces(wall int, p vec) bool {
	w := b.walls[wall]
	way := w.b.minus(w.a)
	return turnOf(way, p.minus(w.a)) <= b.slack*way.length()
}

// topAt is the lowest top of the walls that a point of the plan lies on; no wall
// stands in the way where there is none.
func (b *building) topAt(p vec) float64 {
	top := math.Inf(1)
	for i, w := range b.walls {
		if w.toPoint(p).gap <= near*b.slack {
			top = min(top, b.tops[i])
		}
	}
	if math.IsInf(top, 1) {
		return math.Inf(-1)
	}
	return top
}
