package properties

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sync"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/site"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// measuring are the rules that measure distances.
var measuring = sync.OnceValue(func() []*rules.Compiled {
	var list []*rules.Compiled
	for _, rule := range allRules() {
		if len(rule.Distances()) > 0 {
			list = append(list, rule)
		}
	}
	return list
})

// fartherAway: an intake that is moved so that it comes nearer to nothing gets no
// finding of distances that it did not have.
func fartherAway(s *specimen) (int, error) {
	d, err := load(s.text)
	if err != nil {
		return 0, err
	}
	intake := lonely(d, s.r)
	if intake == nil {
		return 0, nil
	}
	asked := chosen(s.r, measuring(), share)
	was, near := ask(facts.Of(d), asked), ways(d, intake)
	seen := 0
	for range 10 {
		angle, step := s.r.Float64()*2*math.Pi, q.Length(s.r.Float64()*5)
		before := *intake.At
		intake.At.X += step * q.Length(math.Cos(angle))
		intake.At.Y += step * q.Length(math.Sin(angle))
		far := ways(d, intake)
		if !noneNearer(near, far) {
			*intake.At = before
			continue
		}
		seen++
		is := ask(facts.Of(d), asked)
		for about := range is {
			if asking(is[about]) > asking(was[about]) {
				return seen, fmt.Errorf("%s was %v, is %v when the intake is moved from %v to %v", about, was[about], is[about], before, *intake.At)
			}
		}
		was, near = is, far
	}
	return seen, nil
}

// lonely stands an intake on a post somewhere around the house, with some of what
// the design has near it; nil where the design has none.
func lonely(d *design.Design, r *rand.Rand) *design.Opening {
	var intake *design.Opening
	for _, o := range d.Openings {
		if o.Kind == "intake" && o.Diameter != nil {
			intake = o
		}
	}
	if intake == nil {
		return nil
	}
	angle, away := r.Float64()*2*math.Pi, 12+10*r.Float64()
	intake.Placement = design.Placement{
		At:    &design.Point{X: q.Length(5 + away*math.Cos(angle)), Y: q.Length(4 + away*math.Sin(angle))},
		Level: new(q.Length(0.5 + 3*r.Float64())), Diameter: intake.Diameter,
	}
	d.Lines = chosen(r, d.Lines, r.IntN(2))
	d.Sources = chosen(r, d.Sources, 1+r.IntN(3))
	d.StatedDistances = nil
	return intake
}

// ways are the lengths from an intake to everything else, straight, on the plan
// and around the house; NaN where one cannot be told.
func ways(d *design.Design, intake *design.Opening) []q.Length {
	s := site.New(d)
	var list []q.Length
	for _, other := range d.Things() {
		switch other.(type) {
		case *design.Opening, *design.BuildingOpening, *design.Source, *design.Line:
		default:
			continue
		}
		if other == any(intake) {
			continue
		}
		for _, measure := range []func(a, b any) (q.Length, error){s.Distance, s.Horizontal, s.Taut} {
			way, err := measure(intake, other)
			if err != nil {
				way = q.Length(math.NaN())
			}
			list = append(list, way)
		}
	}
	return list
}

// noneNearer tells whether no way is shorter than it was, nor told where it was not.
func noneNearer(was, is []q.Length) bool {
	for i := range was {
		unknown := math.IsNaN(float64(was[i]))
		if unknown != math.IsNaN(float64(is[i])) || !unknown && is[i] < was[i] {
			return false
		}
	}
	return true
}
