package site

import (
	"math"
	"slices"
)

// end is a piece of a thing at which a string can end. Its heights are the same
// all over the plan, except for a disc on a wall.
type end struct {
	body      piece   // in space
	flat      piece   // on the plan, without hollows
	low, high float64 // heights
	round     bool    // an upright disc, above a segment of the plan
	outward   vec     // of the wall that it is on; zero otherwise
	above     bool    // over the footprint, and not below the low part of the building
}

// ends takes a thing apart. What lies level and reaches into the footprint also
// has ends where walls cross it: there a string along a wall reaches it.
func (b *building) ends(p *place, span [2]float64) []end {
	if p.isLine() {
		return b.curtain(p.onSite(onPlan).shape[0].(segment), span)
	}
	var list []end
	for _, whole := range p.onSite(inSpace).shape {
		parts := withoutHollows(whole)
		for _, part := range parts {
			e := endOf(part)
			e.above = !p.onWall() && (p.onRoof() || e.low >= b.low-b.slack) && b.under(e.flat)
			list = append(list, e)
		}
		if p.onWall() {
			continue
		}
		if len(parts) > 1 {
			parts = append(parts, whole)
		}
		for _, part := range parts {
			list = append(list, b.touched(part)...)
		}
	}
	return list
}

func endOf(p piece) end {
	switch p := p.(type) {
	case segment:
		flat := segment{p.a.onPlan(), p.b.onPlan()}
		return end{body: p, flat: flat, low: min(p.a[2], p.b[2]), high: max(p.a[2], p.b[2])}
	case disc:
		return endOfDisc(p)
	}
	r := p.(region)
	low := r.corners[0][2]
	if r.isLevel() {
		flat := region{make([]vec, len(r.corners)), up}
		for i, c := range r.corners {
			flat.corners[i] = c.onPlan()
		}
		return end{body: r, flat: flat, low: low, high: low}
	}
	base := segment{r.corners[0].onPlan(), r.corners[1].onPlan()}
	return end{body: r, flat: base, low: low, high: r.corners[2][2], outward: r.normal}
}

func endOfDisc(d disc) end {
	z := d.centre[2]
	if d.normal == up {
		return end{body: d, flat: disc{d.centre.onPlan(), up, d.radius}, low: z, high: z}
	}
	half := up.cross(d.normal).times(d.radius)
	flat := segment{d.centre.minus(half).onPlan(), d.centre.plus(half).onPlan()}
	return end{body: d, flat: flat, low: z - d.radius, high: z + d.radius, round: d.radius > 0, outward: d.normal}
}

// withoutHollows takes an area apart into its sides, unless it is a plain one of
// four corners at most; anything else stays as it is. A string from outside the
// area reaches its sides first.
func withoutHollows(p piece) []piece {
	r, isRegion := p.(region)
	if !isRegion || !r.isLevel() || r.isConvex() {
		return []piece{p}
	}
	sides := make([]piece, len(r.corners))
	for i := range r.corners {
		sides[i] = r.edge(i)
	}
	return sides
}

func (r region) isLevel() bool { return math.Abs(r.normal[2]) > 0.5 }

// isConvex tells that an area of four corners at most has no hollow: all turn the
// same way. One with more corners could wind around itself.
func (r region) isConvex() bool {
	n := len(r.corners)
	left, right := false, false
	for i := range n {
		turn := turnOf(r.edge(i).b.minus(r.edge(i).a), r.edge((i+1)%n).b.minus(r.edge((i+1)%n).a))
		left, right = left || turn > 0, right || turn < 0
	}
	return n <= 4 && left != right
}

// curtain is a line of the plan, at all heights that count.
func (b *building) curtain(line segment, span [2]float64) []end {
	at := func(s segment) end {
		low, high := vec{0, 0, span[0]}, vec{0, 0, span[1]}
		body := region{[]vec{s.a.plus(low), s.b.plus(low), s.b.plus(high), s.a.plus(high)}, vec{1, 0, 0}}
		if way := s.b.minus(s.a); way.length() > 0 {
			body.normal = way.cross(up).times(1 / way.length())
		}
		return end{body: body, flat: s, low: span[0], high: span[1]}
	}
	list := []end{at(line)}
	for _, cut := range b.portions(line) {
		list = append(list, at(cut))
	}
	return list
}

// touched gives the parts of the walls that a level piece covers, at its level.
func (b *building) touched(p piece) []end {
	flat := endOf(p)
	level := vec{0, 0, flat.low}
	var list []end
	for _, s := range b.portions(flat.flat) {
		e := end{body: segment{s.a.plus(level), s.b.plus(level)}, flat: s, low: flat.low, high: flat.low}
		list = append(list, e)
	}
	return list
}

// under tells whether the footprint lies beneath a part of a piece of the plan.
func (b *building) under(flat piece) bool {
	switch p := flat.(type) {
	case segment:
		return len(b.indoors(p)) > 0
	case disc:
		meets := func(w segment) bool { return w.toPoint(p.centre).gap < p.radius-b.slack }
		return b.deep(p.centre) || slices.ContainsFunc(b.walls, meets)
	}
	r := flat.(region)
	for i := range r.corners {
		if len(b.indoors(r.edge(i))) > 0 {
			return true
		}
	}
	return r.holds(b.walls[0].a)
}
