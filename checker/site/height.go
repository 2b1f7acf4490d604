package site

import (
	"errors"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

var errNoHeight = errors.New("a line of the plan has no height, expected a thing with a bottom and a top edge")

// Rise is the bottom edge of upper above the top edge of lower; negative when it
// lies lower than that.
func (s *Site) Rise(lower, upper any) (q.Length, error) {
	a, b, err := s.pair(lower, upper)
	if err != nil {
		return 0, err
	}
	if stated, value := s.drawn.find(a, b, statedRiseFrom(a)); stated != nil {
		return value, nil
	}
	if a.isLine() || b.isLine() {
		return 0, errNoHeight
	}
	if stated, value := s.drawn.find(a, b, statedRiseFrom(b)); stated != nil {
		return turned(value, a, b)
	}
	first, second, _ := look(a, b, inHeight)
	if err := problems(first, second); err != nil {
		return 0, err
	}
	_, top := first.levels()
	bottom, _ := second.levels()
	return q.Length(bottom - top), nil
}

// turned is the bottom of upper above the top of lower when a drawing gives the
// bottom of lower above the top of upper: the heights of both come off.
func turned(stated q.Length, lower, upper *place) (q.Length, error) {
	first, second := lower.alone(), upper.alone()
	if err := problems(first, second); err != nil {
		return 0, err
	}
	bottom, top := first.levels()
	otherBottom, otherTop := second.levels()
	return -stated - q.Length(top-bottom) - q.Length(otherTop-otherBottom), nil
}

// Height is the bottom edge of a thing above the finished ground. A thing that
// is not on a wall may say so itself, as above_grade. On the roof, the ground is
// otherwise the highest one along the footprint, so that no height comes out too
// large.
func (s *Site) Height(a any) (q.Length, error) {
	p, err := s.place(a)
	switch {
	case err != nil:
		return 0, err
	case p.isLine():
		return 0, errNoHeight
	case p.onWall():
		bottom, _ := p.inWall(inHeight).levels()
		return known(bottom, p.inWall(inHeight))
	}
	var r reading
	return known(r.heightOf(p, s.design), r.view(nil))
}

// known gives a length, unless the view that it comes from has a problem.
func known(length float64, v *view) (q.Length, error) {
	if err := v.problem(); err != nil {
		return 0, err
	}
	return q.Length(length), nil
}

func (r *reading) heightOf(p *place, d *design.Design) float64 {
	if p.where.AboveGrade != nil || !p.onRoof() {
		return r.length(p.thing, "above_grade", p.where.AboveGrade)
	}
	return r.length(p.thing, "level", p.where.Level) - r.highestGrade(d)
}
