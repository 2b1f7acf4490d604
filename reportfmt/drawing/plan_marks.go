package drawing

import (
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/site"
)

// dimensions draws every distance whose place is known.
func (p *plan) dimensions() {
	for _, dim := range p.marks.Dimensions {
		if !p.shows(dim) {
			continue
		}
		m, err := p.measure(dim)
		a, b := spot{m.From[0], m.From[1]}, spot{m.To[0], m.To[1]}
		if err != nil || !m.Placed || !p.view.holds(a) && !p.view.holds(b) {
			continue
		}
		found := foundText(m, p.units)
		p.dimension(dim, a, b, found)
		p.findings = append(p.findings, dim.Number)
		p.titles = append(p.titles, upperFirst(dim.words(found))+".")
	}
}

// shows tells whether a dimension is a straight line of the plan. One along the
// outside is where the house is not in its way, unless that line is drawn already.
func (p *plan) shows(dim Dimension) bool {
	if dim.Way != Around {
		return dim.Way != Upright
	}
	through, err := p.site.Through(dim.From, dim.To)
	return err == nil && !through && !p.marks.has(Straight, dim)
}

func (p *plan) measure(dim Dimension) (site.Measurement, error) {
	if dim.Way == Level {
		return p.site.MeasurePlan(dim.From, dim.To)
	}
	return p.site.Measure(dim.From, dim.To)
}

// names labels the ends of ducts, the sources, and of windows and doors those
// that a finding is about; elevations name the others.
func (p *plan) names() {
	for _, t := range p.drawn {
		if t.role == buildingOpening && !p.marks.about(t.self) {
			continue
		}
		b := p.pixels(p.outlines[t.self]).grown(4)
		colour, weight := ink, ""
		if t.role == intake || t.role == exhaust {
			weight = bold
		}
		if t.role == intake {
			colour = blue
		}
		p.name(b, t.label(), colour, weight)
		if !t.onWall() {
			numbers := p.marks.numbers(t.self)
			p.tags(b, numbers)
			p.findings = append(p.findings, numbers...)
		}
	}
	p.farNames()
}

// farNames labels lines, tracks and areas at the middle of what is drawn of them.
func (p *plan) farNames() {
	for _, l := range p.design.Lines {
		if l.From != nil && l.To != nil {
			p.nameAlong(called(string(l.Kind), l.ID), spotOf(*l.From), spotOf(*l.To))
		}
	}
	for _, s := range p.design.Sources {
		points := append(spots(s.Along), spots(s.Outline)...)
		if len(points) > 1 {
			p.nameAlong(called(string(s.Kind), s.ID), points[0], points[1])
		} else if len(points) == 1 {
			p.nameAlong(called(string(s.Kind), s.ID), points[0], points[0])
		}
	}
}

func (p *plan) nameAlong(text string, a, b spot) {
	m := middle(p.view.nearest(a), p.view.nearest(b))
	p.name(nowhere.with(p.px(m)), text, ink, "")
}

// about tells whether a finding is about a thing.
func (m Marks) about(p design.Placed) bool {
	return slices.ContainsFunc(m.Dimensions, func(d Dimension) bool { return d.From == p || d.To == p }) ||
		slices.ContainsFunc(m.Tags, func(t Tag) bool { return t.On == p })
}
