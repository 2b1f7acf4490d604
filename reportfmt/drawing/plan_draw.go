package drawing

import (
	"github.com/ventlint/ventlint/checker/design"
)

// grounds draws areas and tracks: driveways, streets and their like.
func (p *plan) grounds() {
	for _, s := range p.design.Sources {
		if len(s.Along)+len(s.Outline) == 0 {
			continue
		}
		p.group("source", s.ID, design.Label(s))
		if len(s.Outline) > 0 {
			p.area(`fill="url(#`+p.key+`-dots)" stroke="`+ink+`" stroke-width="1"`, spots(s.Outline)...)
		} else {
			p.line(trackLine, spots(s.Along)...)
		}
		p.end()
		p.titles = append(p.titles, "It shows "+design.Label(s)+".")
	}
}

// footprint draws the walls; the inside only where the walls close.
func (p *plan) footprint() {
	p.put(`<g class="footprint"><title>footprint of the house</title>`)
	var corners []spot
	for _, w := range p.design.Walls {
		if w.From != nil && w.To != nil {
			corners = append(corners, spotOf(*w.From))
		}
	}
	if len(corners) == len(p.design.Walls) && len(corners) > 2 {
		p.area(footprint, corners...)
	}
	for _, w := range p.design.Walls {
		if w.From != nil && w.To != nil {
			p.edge(wallEdge, spotOf(*w.From), spotOf(*w.To))
		}
	}
	p.end()
}

func (p *plan) lines() {
	for _, l := range p.design.Lines {
		if l.From == nil || l.To == nil {
			p.notes = append(p.notes, design.Label(l)+" is not drawn: it does not give both ends")
			continue
		}
		style := lotLine
		if l.Kind == "public-way" {
			style = publicWay
		}
		p.group("line", l.ID, design.Label(l))
		p.line(style, spotOf(*l.From), spotOf(*l.To))
		p.end()
	}
}

func (p *plan) clearances() {
	for _, c := range p.marks.Clearances {
		if o, here := p.outlines[c.Around]; here {
			p.clearance(c, o)
		}
	}
}

// thing draws what stands on the ground or the roof in its size, and what is in a
// wall as a bar across it.
func (p *plan) thing(t thing) {
	o := p.outlines[t.self]
	b := p.pixels(o)
	p.labels.keep(b.grown(3))
	p.group(classes[t.role], t.id, design.Label(t.self))
	if o.line {
		p.bar(t, o)
	} else {
		p.shape(o, 0, fillOf(t.role, p.key))
		p.mark(t, o, b)
	}
	p.end()
}

// bar is a thing in a wall: as wide as it is, of a thickness by its role, and for
// a duct's end an arrow head into the house or out of it.
func (p *plan) bar(t thing, o outline) {
	along := o.a.to(o.b).unit()
	out := spot{along.y, -along.x}
	half := 3.5 / p.scale
	p.area(fillOf(t.role, p.key), o.a.plus(half, out), o.b.plus(half, out), o.b.plus(-half, out), o.a.plus(-half, out))
	if t.role != intake && t.role != exhaust {
		return
	}
	tip, base := 6/p.scale, 16/p.scale
	if t.role == exhaust {
		tip, base = base, tip
	}
	m, side := middle(o.a, o.b), 6/p.scale
	p.area(fillOf(t.role, p.key), m.plus(tip, out), m.plus(base, out).plus(side, along), m.plus(base, out).plus(-side, along))
	p.labels.keep(nowhere.with(p.px(m.plus(base, out)), p.px(m.plus(tip, out))).grown(6))
}

func planLegend(key string) []sample {
	return []sample{
		{"intake, arrow into the house", fillOf(intake, key), false}, {"exhaust, arrow out of it", fillOf(exhaust, key), false},
		{"source to keep away from", fillOf(source, key), false}, {"window, door", fillOf(buildingOpening, key), false},
		{"lot line", lotLine, true}, {"public way", publicWay, true}, {"street or alley", trackLine, true},
		{"distance asked around an intake", asked, true}, {"the same, not kept", askedMore, true},
		{"[n] finding: too short a distance", offending, true},
	}
}
