package drawing

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/facts"
)

// strings draws the way along the outside of the house for every distance whose
// straight line runs through it.
func (p *plan) strings() {
	var through []Dimension
	for _, dim := range p.marks.Dimensions {
		if dim.Way != Around && (dim.Way != Straight || p.marks.has(Around, dim)) {
			continue
		}
		if is, err := p.site.Through(dim.From, dim.To); err == nil && is {
			through = append(through, dim)
		}
	}
	if len(through) == 0 {
		return
	}
	f := facts.Of(p.design) // it bounds how many strings are looked for
	for _, dim := range through {
		p.wayAround(f, dim)
	}
}

// wayAround draws one way, where it is known and begins or ends on the drawing.
func (p *plan) wayAround(f *facts.Facts, dim Dimension) {
	m, err := f.Taut(dim.From, dim.To)
	if err != nil {
		p.notes = append(p.notes, fmt.Sprintf("finding %d: the way along the outside is not drawn: %s", dim.Number, err))
		return
	}
	way := flat(m.Path)
	if !p.view.holds(way[0]) && !p.view.holds(way[len(way)-1]) {
		return
	}
	words := course(m.Path) + " " + q.Format(m.Length, p.units)
	if dim.Way == Around {
		words += ", asked " + dim.Required
	}
	p.strung(dim.Number, words, way)
	p.findings = append(p.findings, dim.Number)
	p.titles = append(p.titles, fmt.Sprintf("Finding %d: %s.", dim.Number, words))
}

// strung puts a way on white, for it runs along walls.
func (p *plan) strung(number int, words string, way []spot) {
	p.put(`<g class="string" data-finding="%d"><title>%s</title>`, number, escaped(fmt.Sprintf("finding %d: %s", number, words)))
	p.line(stringRoom, way...)
	p.line(stringLine, way...)
	p.end()
	var pixels []spot
	for _, at := range way {
		pixels = append(pixels, p.px(at))
	}
	p.figured(fmt.Sprintf("[%d] %s", number, words), pixels...)
	if len(p.legends) == 0 {
		p.legends = []sample{{"the way along the outside of the house", stringLine, true}}
	}
}

// course words where a way runs: one over the tops of walls rises above both ends.
func course(path [][3]float64) string {
	highest := max(path[0][2], path[len(path)-1][2])
	for _, bend := range path {
		if q.Compare(bend[2], highest) > 0 {
			return "along the outside, over the house,"
		}
	}
	return "along the outside"
}

func flat(path [][3]float64) []spot {
	var all []spot
	for _, at := range path {
		all = append(all, spot{at[0], at[1]})
	}
	return all
}

// has tells whether a finding measures the two things of a dimension in a way too.
func (m Marks) has(way Way, dim Dimension) bool {
	ends := func(d Dimension) [2]design.Placed { return [2]design.Placed{d.From, d.To} }
	for _, d := range m.Dimensions {
		if d.Way == way && d.Number == dim.Number && ends(d) == ends(dim) {
			return true
		}
	}
	return false
}
