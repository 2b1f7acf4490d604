package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// levels draws the ground, and the snow and flood lines that are given.
func (e *elevation) levels(d *design.Design) {
	left, right := e.view.x0, e.view.x1
	e.put(`<g class="ground"><title>finished ground</title>`)
	e.area(`fill="url(#`+e.key+`-dots)"`, spot{left, 0}, spot{right, 0}, spot{right, e.view.y0}, spot{left, e.view.y0})
	e.line(ground, spot{left, 0}, spot{right, 0})
	e.end()
	if d.Dwelling != nil && d.Dwelling.SnowDepth != nil {
		e.levelLine("snow", "snow", snowLine, float64(*d.Dwelling.SnowDepth))
	}
	if e.flood != nil {
		e.levelLine("flood", "flood level", floodLine, *e.flood)
	}
}

func (e *elevation) levelLine(class, name, style string, level float64) {
	side := "above"
	if level < 0 {
		side = "below"
	}
	words := fmt.Sprintf("%s, %s %s the ground", name, q.Format(q.Length(math.Abs(level)), e.units), side)
	e.put(`<g class="%s"><title>%s</title>`, class, escaped(words))
	e.line(style, spot{e.view.x0, level}, spot{e.view.x1, level})
	e.end()
	e.titles = append(e.titles, upperFirst(words)+".")
	e.legends = append(e.legends, sample{name, style, true})
	left := e.px(spot{e.view.x0, level})
	e.labels.keep(box{0, left.y - 2, e.width, left.y + 2})
}

// clearances draws the distances asked around the intakes of the wall, which
// count in its plane; those on the plan alone are drawn on the plan.
func (e *elevation) clearances() {
	for _, c := range e.marks.Clearances {
		if o, here := e.outlines[c.Around]; here && !c.OnPlan {
			e.clearance(c, o)
		}
	}
}

// clearance draws all that is too near, by one distance.
func (s *sheet) clearance(c Clearance, o outline) {
	words := fmt.Sprintf("%s around %s, asked by: %s", c.Printed, design.Label(c.Around), strings.Join(c.For, "; "))
	style := asked
	if c.Broken {
		style = askedMore
	}
	s.put(`<g class="clearance" data-around="%s"><title>%s</title>`, escaped(c.Around.ID), escaped(words))
	s.shape(o, float64(c.Reach), `fill="none" `+style)
	s.end()
	s.titles = append(s.titles, upperFirst(words)+".")
	s.reaches = append(s.reaches, reach{c, o})
}

// reachLabels writes the distances on their outlines, where these are on the sheet,
// when all else has its place.
func (s *sheet) reachLabels() {
	for i, r := range s.reaches {
		if !slices.ContainsFunc(s.reaches[:i], r.alike) {
			s.reachLabel(r.clearance, r.outline.bounds())
		}
	}
}

// alike tells whether two clearances are one line, as one in any direction and one on
// the plan are.
func (r reach) alike(other reach) bool {
	return r.clearance.Around == other.clearance.Around && r.clearance.Printed == other.clearance.Printed
}

// reachLabel writes a distance above its outline, or where there is room around it.
func (s *sheet) reachLabel(c Clearance, b box) {
	const places = 24
	mid, half := middle(spot{b.x0, b.y0}, spot{b.x1, b.y1}), textWidth(c.Printed, letters-2, "")/2
	for n := range places {
		turn := 2 * math.Pi * float64(n) / places
		way := spot{math.Sin(turn), math.Cos(turn)}
		at := s.px(mid.plus((b.x1-b.x0)/2, spot{side(way.x), 0}).plus((b.y1-b.y0)/2, spot{0, side(way.y)}).plus(float64(c.Reach), way))
		room := box{at.x - half, at.y - 6, at.x + half, at.y + 6}
		if s.labels.crowd(room.grown(2)) == 0 {
			s.labels.keep(room)
			s.text(spot{room.x0, at.y}, letters-2, blue, "", c.Printed)
			return
		}
	}
}

// side is the side that a way points to: -1 or 1, and 0 for neither.
func side(x float64) float64 {
	if math.Abs(x) < 1e-9 {
		return 0
	}
	return math.Copysign(1, x)
}

// thing draws an outline; its label follows when all dimensions have their place.
func (e *elevation) thing(t thing) {
	o := e.outlines[t.self]
	b := e.pixels(o)
	e.labels.keep(b.grown(3))
	e.group(classes[t.role], t.id, design.Label(t.self))
	e.shape(o, 0, fillOf(t.role, e.key))
	e.mark(t, o, b)
	e.end()
}

var classes = map[role]string{intake: "intake", exhaust: "exhaust", source: "source", buildingOpening: "building-opening"}

// pixels is the box of an outline on the sheet.
func (s *sheet) pixels(o outline) box {
	b := o.bounds()
	return nowhere.with(s.px(spot{b.x0, b.y0}), s.px(spot{b.x1, b.y1}))
}

// mark adds what tells a thing's role beside its fill: slats of an intake, the
// way a window opens, a ring around a point.
func (s *sheet) mark(t thing, o outline, b box) {
	cx, cy := num((b.x0+b.x1)/2), (b.y0+b.y1)/2
	switch {
	case t.role == intake:
		for _, at := range []float64{0.35, 0.65} {
			y := num(b.y0 + at*(b.y1-b.y0))
			s.put(`<path d="M%s %sH%s" stroke="%s" stroke-width="1"/>`, num(b.x0+2), y, num(b.x1-2), blue)
		}
	case t.role == source && o.w*s.scale < 8:
		s.put(`<circle cx="%s" cy="%s" r="7" fill="none" stroke="%s" stroke-width="1.4"/>`, cx, num(cy), ink)
	case t.role == buildingOpening && operable(t):
		s.put(`<path d="M%s %sL%s %sL%s %s" fill="none" stroke="%s" stroke-width="0.8" stroke-dasharray="4 3"/>`,
			num(b.x0), num(b.y0), num(b.x1), num(cy), num(b.x0), num(b.y1), ink)
	}
}

func operable(t thing) bool {
	b, ok := t.self.(*design.BuildingOpening)
	return ok && b.Operable != nil && *b.Operable
}

// labelled names a thing and the findings about it that no dimension shows.
func (e *elevation) labelled(t thing) {
	b := e.pixels(e.outlines[t.self])
	colour, weight := ink, ""
	if t.role == intake || t.role == exhaust {
		weight = bold
	}
	if t.role == intake {
		colour = blue
	}
	e.name(b, t.label(), colour, weight)
	numbers := e.marks.numbers(t.self)
	for _, dim := range e.marks.Dimensions {
		if dim.From == t.self || dim.To == t.self {
			numbers = e.elsewhere(numbers, dim)
		}
	}
	e.tags(b, numbers)
	e.findings = append(e.findings, numbers...)
}

// elsewhere adds the number of a dimension that this drawing does not hold.
func (e *elevation) elsewhere(numbers []int, dim Dimension) []int {
	for _, n := range append(e.findings, numbers...) {
		if n == dim.Number {
			return numbers
		}
	}
	return append(numbers, dim.Number)
}

// numbers lists the findings that are tagged on a thing.
func (m Marks) numbers(p design.Placed) []int {
	var all []int
	for _, t := range m.Tags {
		if t.On == p {
			all = append(all, t.Number)
		}
	}
	return all
}

func upperFirst(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func elevationLegend(key string) []sample {
	return []sample{
		{"intake", fillOf(intake, key), false}, {"exhaust", fillOf(exhaust, key), false},
		{"source to keep away from", fillOf(source, key), false}, {"window, door", fillOf(buildingOpening, key), false},
		{"ground", ground, true}, {"distance asked around an intake", asked, true},
		{"the same, not kept", askedMore, true}, {"[n] finding: too short a distance", offending, true},
	}
}
