package site

// wallView is a thing on a wall: in its place on the site, or in the plane of
// its wall alone.
func wallView(p *place, a aspect, onSite bool) *view {
	var r reading
	f := alone
	if onSite {
		f = r.frame(p, a)
	}
	var fromLeft, aboveGrade float64
	if a != inHeight {
		fromLeft = r.length(p.thing, "from_left", p.where.FromLeft)
	}
	if a != onPlan {
		aboveGrade = r.length(p.thing, "above_grade", p.where.AboveGrade)
	}
	s := r.size(p, a != inHeight, a != onPlan)
	return r.view(shape{wallPiece(f, fromLeft, aboveGrade, s, a)})
}

func wallPiece(f frame, fromLeft, aboveGrade float64, s size, a aspect) piece {
	half, rise := s.across/2, s.along/2
	centre := f.at(fromLeft, aboveGrade)
	switch {
	case a == onPlan:
		return segment{f.at(fromLeft-half, 0), f.at(fromLeft+half, 0)}
	case a == inHeight:
		return segment{f.at(0, aboveGrade-rise), f.at(0, aboveGrade+rise)}
	case s.none:
		return point(centre)
	case s.round:
		return disc{centre, f.outward, half}
	}
	return rectangle(centre, f.right.times(half), up.times(rise), f.outward)
}
