package site

import "github.com/ventlint/ventlint/checker/design"

// levelView is a thing that lies level, on the roof or on the ground: a point,
// a disc, a rectangle, a chain of segments, or an area.
func levelView(p *place, a aspect) *view {
	var r reading
	var level float64
	if a != onPlan {
		level = r.length(p.thing, "level", p.where.Level)
	}
	if a == inHeight {
		return r.view(shape{point(vec{0, 0, level})})
	}
	return r.view(levelShape(&r, p, level))
}

func levelShape(r *reading, p *place, level float64) shape {
	switch w := p.where; {
	case len(w.Outline) > 0:
		return shape{region{r.points(p.thing, "outline", w.Outline, level), up}}
	case len(w.Along) > 0:
		return chain(r.points(p.thing, "along", w.Along, level))
	}
	centre := r.point(p.thing, "at", p.where.At, level)
	s := r.size(p, true, true)
	switch {
	case s.none:
		return shape{point(centre)}
	case s.round:
		return shape{disc{centre, up, s.across / 2}}
	}
	return shape{rectangle(centre, vec{s.across / 2, 0, 0}, vec{0, s.along / 2, 0}, up)}
}

func chain(corners []vec) shape {
	if len(corners) == 1 {
		return shape{point(corners[0])}
	}
	var s shape
	for i := range corners[1:] {
		s = append(s, segment{corners[i], corners[i+1]})
	}
	return s
}

// lineView is a line of the plan, which is seen there alone.
func lineView(l *design.Line, a aspect) *view {
	var r reading
	if a != onPlan {
		return r.view(nil)
	}
	return r.view(shape{segment{r.point(l, "from", l.From, 0), r.point(l, "to", l.To, 0)}})
}
