package site

import "github.com/ventlint/ventlint/checker/design"

// place is one thing on the site.
type place struct {
	thing design.Placed
	index int // among the things of the design; notListed for any other
	id    string
	where *design.Placement // nil for a line of the plan
	wall  *design.Wall      // nil unless it is on a known wall
	site  views
	own   views // in the plane of its wall, which needs nothing of the wall
}

const notListed = -1

func newPlace(thing design.Placed, index int) place {
	p := place{thing: thing, index: index}
	switch t := thing.(type) {
	case *design.Opening:
		p.id, p.where = t.ID, &t.Placement
	case *design.BuildingOpening:
		p.id, p.where = t.ID, &t.Placement
	case *design.Source:
		p.id, p.where = t.ID, &t.Placement
	case *design.Line:
		p.id = t.ID
		return p
	}
	p.wall = p.where.Wall.Target()
	return p
}

// onSite is the thing in its place on the site.
func (p *place) onSite(a aspect) *view {
	return p.site.of(a, func() *view {
		switch line, isLine := p.thing.(*design.Line); {
		case isLine:
			return lineView(line, a)
		case p.onWall():
			return wallView(p, a, true)
		}
		return levelView(p, a)
	})
}

// inWall is a thing on a wall in the plane of that wall.
func (p *place) inWall(a aspect) *view {
	return p.own.of(a, func() *view { return wallView(p, a, false) })
}

// isLine tells whether the thing is a line of the plan, which stands for all
// that is above it and below it.
func (p *place) isLine() bool { return p.where == nil }

// onWall tells whether the thing is on a wall. An opening that says nothing of
// its place counts as on a wall that is still to be given.
func (p *place) onWall() bool {
	w := p.where
	level := p.onRoof() || w.At != nil || len(w.Along) > 0 || len(w.Outline) > 0
	begun := w.FromLeft != nil || w.AboveGrade != nil
	return w.Wall != nil || !level && (begun || !p.isSource())
}

func (p *place) onRoof() bool { return p.where.Roof != nil && *p.where.Roof }

func (p *place) isSource() bool {
	_, is := p.thing.(*design.Source)
	return is
}

// isPoint tells a source whose place is all that counts. Anything else is measured
// from its edge, and is unknown without a size.
func (p *place) isPoint() bool {
	s, is := p.thing.(*design.Source)
	return is && s.Point != nil && *s.Point
}

func (p *place) hasSize() bool {
	return p.where.Diameter != nil || p.where.Width != nil || p.where.Height != nil
}

// alone is the thing in height, wherever it is: no more than its own size.
func (p *place) alone() *view {
	var r reading
	if !p.onWall() {
		return r.view(shape{point(vec{})})
	}
	s := r.size(p, false, true)
	return r.view(shape{wallPiece(alone, 0, 0, s, inHeight)})
}
