package drawing

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/site"
)

// dimensions draws those whose both ends are on the wall, and heights.
func (e *elevation) dimensions() {
	for _, dim := range e.marks.Dimensions {
		from, here := e.outlines[dim.From]
		switch to, both := e.outlines[dim.To]; {
		case here && dim.Way == Upright:
			e.upright(dim, from)
		case here && both && dim.Way == Around && e.marks.has(Straight, dim): // the same line
		case here && both && dim.Way != Level:
			e.straight(dim)
		case here && both:
			e.level(dim, from, to)
		}
	}
}

// upright runs from the ground, or the lasting surface below that an opening
// states, to the bottom edge.
func (e *elevation) upright(dim Dimension, o outline) {
	base := 0.0
	if opening, ok := dim.From.(*design.Opening); ok && opening.SurfaceBelow != nil {
		base = max(base, float64(*opening.SurfaceBelow))
	}
	bottom := spot{o.centre.x, o.bounds().y0}
	e.measured(dim, spot{bottom.x, base}, bottom, dim.Found)
}

// straight runs where the geometry of the site says that the nearest edges are.
func (e *elevation) straight(dim Dimension) {
	m, err := e.site.Measure(dim.From, dim.To)
	if err != nil || !m.Placed {
		e.notes = append(e.notes, fmt.Sprintf("the distance of finding %d is not drawn: the place of the wall is not given", dim.Number))
		return
	}
	e.measured(dim, e.onFace(m.From), e.onFace(m.To), foundText(m, e.units))
}

// level runs at the height of the first thing, between the sides that face each
// other, with a thin line down or up to the second. Where one lies above the
// other it has no length.
func (e *elevation) level(dim Dimension, from, to outline) {
	a, b := from.bounds(), to.bounds()
	x0, x1 := a.x1, b.x0
	switch {
	case a.x0 > b.x1:
		x0, x1 = a.x0, b.x1
	case a.x1 > b.x0: // they overlap
		x0 = (max(a.x0, b.x0) + min(a.x1, b.x1)) / 2
		x1 = x0
	}
	e.line(leaderLine, spot{x1, from.centre.y}, spot{x1, to.centre.y})
	e.measured(dim, spot{x0, from.centre.y}, spot{x1, from.centre.y}, dim.Found)
}

func (e *elevation) measured(dim Dimension, a, b spot, found string) {
	e.dimension(dim, a, b, found)
	e.findings = append(e.findings, dim.Number)
	e.titles = append(e.titles, upperFirst(dim.words(found))+".")
}

// onFace is where a point of the site lies on the wall.
func (e *elevation) onFace(p [3]float64) spot {
	from := spotOf(*e.wall.From)
	along := from.to(spotOf(*e.wall.To)).unit()
	way := from.to(spot{p[0], p[1]})
	return spot{way.x*along.x + way.y*along.y, p[2] - metres(e.wall.Grade)}
}

// foundText is a measured length; one of a drawing says so, for then the line
// may be of another length.
func foundText(m site.Measurement, units q.System) string {
	text := q.Format(m.Length, units)
	if m.Stated != nil {
		text += " as stated"
	}
	return text
}

func spotOf(p design.Point) spot { return spot{float64(p.X), float64(p.Y)} }
