package site

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// lot is a whole site: a footprint, and things of all kinds in all places.
type lot struct {
	walls  []*design.Wall
	things []any
}

func (d dice) lot() lot {
	l := lot{walls: house()}
	for _, w := range l.walls {
		w.Grade = metres(d.within(-1, 1))
	}
	anywhere := func() design.Placement {
		switch d.IntN(4) {
		case 0:
			return roof(d.within(0, 12), d.within(0, 8), d.within(3, 9))
		case 1:
			return ground(d.within(-20, 20), d.within(-20, 20), d.within(-1, 1))
		}
		return on(l.walls[d.IntN(4)], d.within(0.5, 7.5), d.within(0.5, 6))
	}
	for range 4 {
		rectangle := sides(anywhere(), d.within(0.1, 2), d.within(0.1, 2))
		l.things = append(l.things, opening("o", round(anywhere(), d.within(0.05, 1))), window("w", rectangle), source("s", anywhere()))
	}
	centre := vec{d.within(-20, 20), d.within(-20, 20), 0}
	yard, _ := d.star(centre)
	var outline []design.Point
	for _, c := range yard.corners {
		outline = append(outline, *at(c[0], c[1]))
	}
	l.things = append(l.things,
		source("yard", design.Placement{Outline: outline, Level: metres(d.within(-1, 1))}),
		source("street", design.Placement{Along: []design.Point{*at(d.within(-30, 30), -12), *at(d.within(-30, 30), -9), *at(40, d.within(-9, 9))}, Level: metres(0)}),
		lotLine("lot", at(-30, d.within(-20, -5)), at(30, d.within(-20, -5))))
	return l
}

// change is a move of a whole site. What lies level keeps its sides along x and
// y, so that only quarter turns carry rectangles over.
type change struct {
	point    func(design.Point) design.Point
	lift     float64
	mirrored bool // walls then run the other way
	swapped  bool // width and height of what lies level
}

func (c change) of(l lot) lot {
	moved := lot{}
	walls := map[*design.Wall]*design.Wall{}
	for _, w := range l.walls {
		from, to := c.point(*w.From), c.point(*w.To)
		if c.mirrored {
			from, to = to, from
		}
		walls[w] = wall(w.ID, &from, &to, float64(*w.Grade)+c.lift)
		walls[w].Height = w.Height
		moved.walls = append(moved.walls, walls[w])
	}
	if c.mirrored {
		slices.Reverse(moved.walls)
	}
	for _, thing := range l.things {
		moved.things = append(moved.things, c.thing(thing, walls))
	}
	return moved
}

func (c change) thing(thing any, walls map[*design.Wall]*design.Wall) any {
	switch t := thing.(type) {
	case *design.Opening:
		return opening(t.ID, c.placement(t.Placement, walls))
	case *design.BuildingOpening:
		return window(t.ID, c.placement(t.Placement, walls))
	case *design.Source:
		return source(t.ID, c.placement(t.Placement, walls))
	}
	l := thing.(*design.Line)
	from, to := c.point(*l.From), c.point(*l.To)
	return lotLine(l.ID, &from, &to)
}

func (c change) placement(p design.Placement, walls map[*design.Wall]*design.Wall) design.Placement {
	if w := p.Wall.Target(); w != nil {
		p.Wall = &design.Link[design.Wall]{ID: w.ID, To: walls[w]}
		if c.mirrored {
			length := math.Hypot(float64(w.To.X-w.From.X), float64(w.To.Y-w.From.Y))
			p.FromLeft = metres(length - float64(*p.FromLeft))
		}
		return p
	}
	p.Level = metres(float64(*p.Level) + c.lift)
	if p.At != nil {
		p.At = new(c.point(*p.At))
	}
	p.Along, p.Outline = c.points(p.Along), c.points(p.Outline)
	if c.swapped {
		p.Width, p.Height = p.Height, p.Width
	}
	return p
}

func (c change) points(list []design.Point) []design.Point {
	var moved []design.Point
	for _, p := range list {
		moved = append(moved, c.point(p))
	}
	return moved
}

func shiftedBy(x, y, z float64) change {
	return change{lift: z, point: func(p design.Point) design.Point {
		return design.Point{X: p.X + q.Length(x), Y: p.Y + q.Length(y)}
	}}
}

func turnedBy(angle float64) change {
	sin, cos := math.Sincos(angle)
	return change{point: func(p design.Point) design.Point {
		return design.Point{X: p.X*q.Length(cos) - p.Y*q.Length(sin), Y: p.X*q.Length(sin) + p.Y*q.Length(cos)}
	}}
}

func mirror() change {
	return change{mirrored: true, point: func(p design.Point) design.Point { return design.Point{X: -p.X, Y: p.Y} }}
}

// withoutLevelRectangles leaves out what a turn of the site cannot carry over.
func (l lot) withoutLevelRectangles() lot {
	kept := lot{walls: l.walls}
	for _, thing := range l.things {
		if w, ok := thing.(*design.BuildingOpening); !ok || w.Wall != nil {
			kept.things = append(kept.things, thing)
		}
	}
	return kept
}

// sameDistances compares all pairs of two lots.
func sameDistances(t *testing.T, a, b lot, within float64) {
	t.Helper()
	require.Len(t, b.things, len(a.things))
	s := New(&design.Design{})
	for i := range a.things {
		for k := range a.things {
			was, err := s.Distance(a.things[i], a.things[k])
			require.NoError(t, err)
			now, err := s.Distance(b.things[i], b.things[k])
			require.NoError(t, err)
			require.InDelta(t, float64(was), float64(now), within, "straight")
			was, err = s.Horizontal(a.things[i], a.things[k])
			require.NoError(t, err)
			now, err = s.Horizontal(b.things[i], b.things[k])
			require.NoError(t, err)
			require.InDelta(t, float64(was), float64(now), within, "on the plan")
			sameRise(t, s, []any{a.things[i], a.things[k]}, []any{b.things[i], b.things[k]}, within)
		}
	}
}

func sameRise(t *testing.T, s *Site, a, b []any, within float64) {
	t.Helper()
	was, err := s.Rise(a[0], a[1])
	if err != nil {
		require.ErrorIs(t, err, errNoHeight)
		return
	}
	now, err := s.Rise(b[0], b[1])
	require.NoError(t, err)
	require.InDelta(t, float64(was), float64(now), within, "rise")
}

func TestMovingTheWholeSiteChangesNothing(t *testing.T) {
	d := newDice(10)
	quarter := turnedBy(math.Pi / 2)
	quarter.swapped = true
	for range 10 {
		l := d.lot()
		sameDistances(t, l, shiftedBy(d.within(-99, 99), d.within(-99, 99), d.within(-9, 9)).of(l), 1e-11)
		sameDistances(t, l, quarter.of(l), 1e-11)
		sameDistances(t, l, mirror().of(l), 1e-11)
		free := l.withoutLevelRectangles()
		sameDistances(t, free, turnedBy(d.within(0, 7)).of(free), 1e-11)
	}
}

func TestDistancesAreSane(t *testing.T) {
	d := newDice(11)
	for range 20 {
		l := d.lot()
		for _, a := range l.things {
			for _, b := range l.things {
				straight, plan := distance(t, a, b), horizontal(t, a, b)
				assert.GreaterOrEqual(t, plan, 0.0)
				assert.LessOrEqual(t, plan, straight+1e-12, "never longer on the plan")
				assert.InDelta(t, straight, distance(t, b, a), 1e-12, "either way")
				assert.InDelta(t, plan, horizontal(t, b, a), 1e-12, "either way")
			}
			assert.Zero(t, distance(t, a, a))
		}
	}
}

// The distance between two pieces is no longer than the way by a third.
func TestNoWayRoundIsShorter(t *testing.T) {
	d := newDice(12)
	for range 3000 {
		a, b, c := d.piece(5), d.piece(5), d.piece(5)
		first, second := a.to(b), b.to(c)
		through := second.from.minus(first.to).length()
		assert.LessOrEqual(t, a.to(c).gap, first.gap+through+second.gap+1e-12)
	}
}

// Moving one of two pieces away from the other, straight or aslant, never brings
// them nearer.
func TestMovingAwayNeverBringsNearer(t *testing.T) {
	d := newDice(13)
	for range 3000 {
		a, b := d.piece(4), d.piece(4)
		was := a.to(b)
		if was.gap < 1e-3 {
			continue
		}
		away := was.to.minus(was.from).times(1 / was.gap)
		aslant := d.direction()
		if aslant.dot(away) < 0 {
			aslant = aslant.times(-1)
		}
		step := d.within(0, 10)
		assert.GreaterOrEqual(t, a.to(shifted(b, aslant.times(step))).gap, was.gap-1e-11)
		assert.InDelta(t, was.gap+step, a.to(shifted(b, away.times(step))).gap, 1e-11)
	}
}

// A design may give the same figure in other ways: a footprint with a wall cut in
// two has the same distances.
func TestAWallCutInTwoMeasuresTheSame(t *testing.T) {
	south := house()[0]
	west, east := wall("west half", at(0, 0), at(5, 0), 0), wall("east half", at(5, 0), at(12, 0), 0)
	d := newDice(14)
	for range 200 {
		x, z := d.within(6, 11), d.within(1, 5)
		a := opening("a", round(on(south, 2, 1), 0.3))
		whole := window("b", sides(on(south, x, z), 0.8, 1.2))
		part := window("b", sides(on(east, x-5, z), 0.8, 1.2))
		assert.InDelta(t, distance(t, a, whole), distance(t, opening("a", round(on(west, 2, 1), 0.3)), part), 1e-12)
	}
}
