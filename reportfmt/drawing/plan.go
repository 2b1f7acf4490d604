package drawing

import (
	"fmt"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/site"
)

// How far a plan reaches beyond the house and the things beside it for lines, and
// beyond those for streets and areas; how much is left blank at its edges, all in
// metres; and how tall it may be, in pixels.
const (
	planReach   = 9.0
	trackReach  = 2.0
	farAway     = 25.0 // from the house: what stands farther is only told of
	planMargin  = 1.2
	tallestPlan = 800.0
)

// plan is the site seen from above: x to the right, y up.
type plan struct {
	*sheet
	design   *design.Design
	site     *site.Site
	marks    Marks
	units    q.System
	outlines map[design.Placed]outline
	drawn    []thing
	notes    []string
	findings []int
	legends  []sample
}

// Plan draws the footprint, lot lines and ways, openings, sources, and the
// distances that a finding is about. Its SVG is empty where the design places
// nothing. key names the drawing and prefixes its ids; it must be fit for an XML
// name.
func Plan(d *design.Design, s *site.Site, m Marks, key string) Drawing {
	p := &plan{design: d, site: s, marks: m, units: unitsOf(d), outlines: map[design.Placed]outline{}}
	p.read()
	extent := p.extent()
	if extent.empty() {
		return Drawing{}
	}
	p.sheet = newSheet(key, extent, tallestPlan)
	p.grounds()
	p.footprint()
	p.lines()
	p.clearances()
	for _, t := range p.drawn {
		p.thing(t)
	}
	p.dimensions()
	p.strings()
	p.writeFigures()
	p.names()
	p.reachLabels()
	slices.Sort(p.findings)
	plan := p.drawing("plan of the site", p.text(), p.units, append(planLegend(key), p.legends...))
	plan.Notes, plan.Findings = p.notes, slices.Compact(p.findings)
	return plan
}

func (p *plan) read() {
	for _, t := range things(p.design) {
		switch missing := p.place(t); missing {
		case "":
			p.drawn = append(p.drawn, t)
		case "outline":
		default:
			p.notes = append(p.notes, t.lacks(missing))
		}
	}
	for _, w := range p.design.Walls {
		if w.From == nil || w.To == nil {
			p.notes = append(p.notes, fmt.Sprintf("wall %q is not drawn: it does not give both ends", w.ID))
		}
	}
}

// place finds the outline of a thing; it gives the key that is missing, and
// "outline" for what lies along a line or covers an area.
func (p *plan) place(t thing) string {
	w, h, round, missing := t.size()
	switch {
	case t.onWall():
		return p.placeOnWall(t, w, missing)
	case len(t.where.Along)+len(t.where.Outline) > 0:
		return "outline"
	case t.where.At == nil:
		return "at"
	case missing != "":
		return missing
	}
	p.outlines[t.self] = outline{centre: spotOf(*t.where.At), w: w, h: h, round: round}
	return ""
}

func (p *plan) placeOnWall(t thing, width float64, missing string) string {
	wall := t.wall()
	switch {
	case wall == nil || wall.From == nil || wall.To == nil:
		return "wall with both ends"
	case t.where.FromLeft == nil:
		return "from_left"
	case missing == "diameter" || missing == "width":
		return missing
	case missing == "height": // the plan shows the width alone
		width = metres(t.where.Width)
	}
	from := spotOf(*wall.From)
	along := from.to(spotOf(*wall.To)).unit()
	at := metres(t.where.FromLeft)
	p.outlines[t.self] = outline{line: true, a: from.plus(at-width/2, along), b: from.plus(at+width/2, along)}
	return ""
}

// extent is what the plan shows: the house, what stands beside it, and of lines
// and areas what lies within reach.
func (p *plan) extent() box {
	b := nowhere
	for _, w := range p.design.Walls {
		if w.From != nil && w.To != nil {
			b = b.with(spotOf(*w.From), spotOf(*w.To))
		}
	}
	house := b
	for _, t := range p.drawn {
		o := p.outlines[t.self].bounds()
		if at := middle(spot{o.x0, o.y0}, spot{o.x1, o.y1}); house.empty() || house.grown(farAway).holds(at) {
			b = b.with(spot{o.x0, o.y0}, spot{o.x1, o.y1})
		} else {
			p.notes = append(p.notes, design.Label(t.self)+" lies outside the drawing")
		}
	}
	if b.empty() {
		return b
	}
	b = b.reaching(planReach, p.linePoints())
	return b.reaching(trackReach, p.trackPoints()).grown(planMargin)
}

// linePoints lists the ends of lines.
func (p *plan) linePoints() []spot {
	var all []spot
	for _, l := range p.design.Lines {
		if l.From != nil && l.To != nil {
			all = append(all, spotOf(*l.From), spotOf(*l.To))
		}
	}
	return all
}

// trackPoints lists the points of streets and areas.
func (p *plan) trackPoints() []spot {
	var all []spot
	for _, s := range p.design.Sources {
		all = append(append(all, spots(s.Along)...), spots(s.Outline)...)
	}
	return all
}

func spots(points []design.Point) []spot {
	var all []spot
	for _, p := range points {
		all = append(all, spotOf(p))
	}
	return all
}

// text describes the drawing in words.
func (p *plan) text() string {
	var shown []string
	for _, t := range p.drawn {
		at := t.label()
		if w := t.wall(); w != nil {
			at += " on wall " + w.ID
		}
		shown = append(shown, at)
	}
	text := "The site seen from above, to scale. It shows " + strings.Join(shown, "; ") + "."
	return strings.Join(append([]string{text}, p.titles...), " ")
}
