package properties

import (
	"fmt"
	"math"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/facts"
)

// elsewhere: where a site lies on the plan and above the datum, how it is turned,
// and whether it is mirrored changes nothing.
func elsewhere(s *specimen) (int, error) {
	d, err := load(s.text)
	if err != nil {
		return 0, err
	}
	x, y := q.Length(s.r.Float64()*200-100), q.Length(s.r.Float64()*200-100)
	lift(d, q.Length(s.r.Float64()*20-10))
	shift := func(p design.Point) design.Point { return design.Point{X: p.X + x, Y: p.Y + y} }
	for i, step := range []func(){
		func() { relocate(d, shift) },
		func() { turn(d, s.r.Float64()*2*math.Pi) },
		func() { mirror(d) },
	} {
		step()
		if err := differ(s.whole, ask(facts.Of(d), s.rules)); err != nil {
			return i + 1, fmt.Errorf("%s: %w", []string{"shifted and lifted", "turned", "mirrored"}[i], err)
		}
	}
	return 3, nil
}

// placements are the places of all things but walls and lines.
func placements(d *design.Design) []*design.Placement {
	var list []*design.Placement
	for _, o := range d.Openings {
		list = append(list, &o.Placement)
	}
	for _, o := range d.BuildingOpenings {
		list = append(list, &o.Placement)
	}
	for _, o := range d.Sources {
		list = append(list, &o.Placement)
	}
	return list
}

// relocate moves every point of the plan.
func relocate(d *design.Design, to func(design.Point) design.Point) {
	move := func(points ...*design.Point) {
		for _, p := range points {
			if p != nil {
				*p = to(*p)
			}
		}
	}
	for _, w := range d.Walls {
		move(w.From, w.To)
	}
	for _, l := range d.Lines {
		move(l.From, l.To)
	}
	for _, p := range placements(d) {
		move(p.At)
		for i := range p.Along {
			move(&p.Along[i])
		}
		for i := range p.Outline {
			move(&p.Outline[i])
		}
	}
}

// lift raises everything above the datum.
func lift(d *design.Design, by q.Length) {
	raise := func(x *q.Length) {
		if x != nil {
			*x += by
		}
	}
	raise(d.Dwelling.FloodLevel)
	for _, w := range d.Walls {
		raise(w.Grade)
	}
	for _, p := range placements(d) {
		raise(p.Level)
	}
}

// turn turns a site about its datum. The sides of a rectangle that lies level run
// along x and y: a site with one can be turned by quarters alone.
func turn(d *design.Design, angle float64) {
	if slices.ContainsFunc(placements(d), levelRectangle) {
		angle = math.Pi / 2
		for _, p := range placements(d) {
			if levelRectangle(p) {
				p.Width, p.Height = p.Height, p.Width
			}
		}
	}
	sin, cos := math.Sincos(angle)
	relocate(d, func(p design.Point) design.Point {
		return design.Point{X: p.X*q.Length(cos) - p.Y*q.Length(sin), Y: p.X*q.Length(sin) + p.Y*q.Length(cos)}
	})
}

func levelRectangle(p *design.Placement) bool { return p.Wall == nil && p.Width != nil }

// mirror turns left into right.
func mirror(d *design.Design) {
	for _, p := range placements(d) {
		if w := p.Wall.Target(); w != nil && p.FromLeft != nil && w.From != nil && w.To != nil {
			*p.FromLeft = q.Length(math.Hypot(float64(w.To.X-w.From.X), float64(w.To.Y-w.From.Y))) - *p.FromLeft
		}
	}
	relocate(d, func(p design.Point) design.Point { return design.Point{X: -p.X, Y: p.Y} })
	for _, w := range d.Walls {
		w.From, w.To = w.To, w.From
	}
	slices.Reverse(d.Walls)
	other := map[design.DischargeDirection]design.DischargeDirection{"left": "right", "right": "left"}
	for _, o := range d.Openings {
		if o.Discharges != nil && other[*o.Discharges] != "" {
			*o.Discharges = other[*o.Discharges]
		}
	}
}
