package drawing

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/site"
)

// Margins around what an elevation must show, and the most that it goes below
// ground for a flood line, in metres.
const (
	sideMargin   = 1.5
	topMargin    = 0.5
	groundDepth  = 0.6
	deepestFlood = 2.0
	tallestFace  = 520.0
)

// elevation is one wall as seen from outside: along it from its left end, and up
// from the ground.
type elevation struct {
	*sheet
	wall     *design.Wall
	site     *site.Site
	marks    Marks
	units    q.System
	length   float64 // of the wall; 0 when its ends are not given
	top      float64
	flood    *float64 // above the ground at the wall
	outlines map[design.Placed]outline
	drawn    []thing
	notes    []string
	findings []int
	legends  []sample
}

// Elevation draws a wall as seen from outside, with what it bears, the ground,
// snow and flood lines that the design gives, the distances asked around its
// intakes, and the dimensions that lie in its plane. key names the drawing and
// prefixes its ids; it must be fit for an XML name.
func Elevation(d *design.Design, s *site.Site, w *design.Wall, m Marks, key string) Drawing {
	e := &elevation{wall: w, site: s, marks: m, units: unitsOf(d), outlines: map[design.Placed]outline{}}
	e.read(d)
	e.sheet = newSheet(key, e.extent(), tallestFace)
	e.face()
	e.levels(d)
	e.clearances()
	for _, t := range e.largestFirst() {
		e.thing(t)
	}
	e.dimensions()
	e.writeFigures()
	for _, t := range e.drawn {
		e.labelled(t)
	}
	e.reachLabels()
	slices.Sort(e.findings)
	face := e.drawing(fmt.Sprintf("elevation of wall %q", w.ID), e.text(), e.units, append(e.legends, elevationLegend(key)...))
	face.Notes, face.Findings = e.notes, slices.Compact(e.findings)
	return face
}

// read finds where everything on the wall is.
func (e *elevation) read(d *design.Design) {
	for _, t := range things(d) {
		if t.wall() == e.wall {
			e.place(t)
		}
	}
	if w := e.wall; w.From != nil && w.To != nil {
		e.length = spotOf(*w.From).to(spotOf(*w.To)).length()
	} else {
		e.notes = append(e.notes, "the ends of the wall are not given: its sides are not drawn")
	}
	e.top = metres(e.wall.Height)
	if e.wall.Height == nil {
		e.notes = append(e.notes, "the height of the wall is not given: its top is drawn dotted, above all that it bears")
		for _, o := range e.outlines {
			e.top = max(e.top, o.bounds().y1+topMargin)
		}
	}
	e.readFlood(d)
}

func (e *elevation) readFlood(d *design.Design) {
	switch {
	case d.Dwelling == nil || d.Dwelling.FloodLevel == nil:
	case e.wall.Grade == nil:
		e.notes = append(e.notes, "the flood level is not drawn: the wall gives no grade")
	default:
		level := float64(*d.Dwelling.FloodLevel - *e.wall.Grade)
		if level < -deepestFlood {
			e.notes = append(e.notes, fmt.Sprintf("the flood level lies %s below the ground, outside the drawing", q.Format(q.Length(-level), e.units)))
			return
		}
		e.flood = &level
	}
}

func (e *elevation) place(t thing) {
	w, h, round, missing := t.size()
	switch {
	case t.where.FromLeft == nil:
		missing = "from_left"
	case t.where.AboveGrade == nil:
		missing = "above_grade"
	}
	if missing != "" {
		e.notes = append(e.notes, t.lacks(missing))
		return
	}
	e.outlines[t.self] = outline{centre: spot{metres(t.where.FromLeft), metres(t.where.AboveGrade)}, w: w, h: h, round: round}
	e.drawn = append(e.drawn, t)
}

// extent is what the drawing must show.
func (e *elevation) extent() box {
	b := box{0, -groundDepth, e.length, e.top}
	for _, o := range e.outlines {
		b = b.with(spot{o.bounds().x0, o.bounds().y0}, spot{o.bounds().x1, o.bounds().y1})
	}
	if e.flood != nil {
		b = b.with(spot{0, *e.flood - groundDepth/2}, spot{0, *e.flood + topMargin})
	}
	return box{b.x0 - sideMargin, b.y0, b.x1 + sideMargin, b.y1 + topMargin}
}

// face draws the wall's outline; sides that are not known are left out.
func (e *elevation) face() {
	left, right := 0.0, e.length
	if e.length == 0 {
		left, right = e.view.x0, e.view.x1
	}
	e.put(`<g class="wall"><title>%s</title>`, escaped(fmt.Sprintf("wall %q", e.wall.ID)))
	e.area(`fill="#f6f4ee"`, spot{left, 0}, spot{right, 0}, spot{right, e.top}, spot{left, e.top})
	if e.length > 0 {
		e.edge(wallEdge, spot{left, 0}, spot{left, e.top})
		e.edge(wallEdge, spot{right, 0}, spot{right, e.top})
	}
	style := wallEdge
	if e.wall.Height == nil {
		style = unknown
	}
	e.edge(style, spot{left, e.top}, spot{right, e.top})
	e.end()
}

// largestFirst lists what is drawn so that nothing small is hidden.
func (e *elevation) largestFirst() []thing {
	sorted := slices.Clone(e.drawn)
	slices.SortStableFunc(sorted, func(a, b thing) int {
		return cmp.Compare(area(e.outlines[b.self].bounds()), area(e.outlines[a.self].bounds()))
	})
	return sorted
}

// text describes the drawing in words.
func (e *elevation) text() string {
	var shown []string
	for _, t := range e.drawn {
		o := e.outlines[t.self]
		shown = append(shown, fmt.Sprintf("%s at %s from the left and %s above the ground", t.label(),
			q.Format(q.Length(o.centre.x), e.units), q.Format(q.Length(o.centre.y), e.units)))
	}
	text := "The wall as seen from outside, to scale. It bears " + strings.Join(shown, "; ") + "."
	if len(shown) == 0 {
		text = "The wall as seen from outside, to scale. Nothing on it can be drawn."
	}
	return strings.Join(append([]string{text}, e.titles...), " ")
}
