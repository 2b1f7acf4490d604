package site

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

func TestDistanceOnOneWall(t *testing.T) {
	south := house()[0]
	a := opening("a", round(on(south, 2, 1.5), 0.15))
	assert.InDelta(t, 3, distance(t, a, opening("b", round(on(south, 5.15, 1.5), 0.15))), 1e-12)
	assert.InDelta(t, 0, distance(t, a, opening("b", round(on(south, 2.1, 1.5), 0.15))), 1e-12, "they overlap")
	pane := window("w", sides(on(south, 5, 3), 1, 1))
	assert.InDelta(t, math.Hypot(2.5, 1)-0.075, distance(t, a, pane), 1e-12, "to the corner of the pane")
	assert.InDelta(t, 2.5-0.075, horizontal(t, a, pane), 1e-12)
}

// from_left runs from the first point of a wall, which is the left end seen from
// outside when the footprint runs counter-clockwise.
func TestFromLeftRunsFromTheFirstPoint(t *testing.T) {
	walls := house()
	onSouth := source("s", on(walls[0], 1, 1))
	onNorth := source("n", on(walls[2], 1, 0))
	assert.InDelta(t, math.Hypot(10, 8), distance(t, onSouth, onNorth), 1e-12, "1,0 to 11,8 at one level")
	onEast := source("e", on(walls[1], 3, 1))
	assert.InDelta(t, math.Sqrt(11*11+3*3+0.5*0.5), distance(t, onSouth, onEast), 1e-12, "the east grade is 0.5 m up")
	onWest := source("w", on(walls[3], 1, 1.5))
	assert.InDelta(t, math.Sqrt(1+49+1), distance(t, onSouth, onWest), 1e-12, "0,7 at 2 m")
}

func TestDistanceOnTheRoof(t *testing.T) {
	south := house()[0]
	hood := opening("hood", round(on(south, 4, 2.5), 0.2))
	flue := source("flue", round(roof(4, 3, 6), 0.2))
	assert.InDelta(t, math.Hypot(2.9, 3.4), distance(t, hood, flue), 1e-12)
	assert.InDelta(t, 2.9, horizontal(t, hood, flue), 1e-12)
	curb := opening("curb", sides(roof(4, 3, 6), 2, 1))
	assert.InDelta(t, math.Hypot(2.5, 3.4), distance(t, hood, curb), 1e-12)
	assert.InDelta(t, 1, distance(t, curb, source("stack", roof(6, 3, 6))), 1e-12, "width lies along x")
	assert.InDelta(t, 1, distance(t, curb, source("stack", roof(4, 4.5, 6))), 1e-12, "height lies along y")
}

func TestDistanceToTheGround(t *testing.T) {
	south := house()[0]
	hood := opening("hood", round(on(south, 4, 1), 0.2))
	drive := source("drive", design.Placement{
		Outline: []design.Point{*at(0, -9), *at(8, -9), *at(8, -3), *at(0, -3)}, Level: metres(0),
	})
	assert.InDelta(t, math.Hypot(3, 0.9), distance(t, hood, drive), 1e-12)
	assert.InDelta(t, 3, horizontal(t, hood, drive), 1e-12)
	street := source("street", design.Placement{
		Along: []design.Point{*at(-20, -12), *at(2, -12), *at(30, -30)}, Level: metres(1),
	})
	assert.InDelta(t, 12, horizontal(t, source("on the wall", on(south, 1, 1)), street), 1e-12)
	assert.InDelta(t, 12, distance(t, source("on the wall", on(south, 1, 1)), street), 1e-12)
	spot := source("spot", design.Placement{Along: []design.Point{*at(4, -5)}, Level: metres(0.9)})
	assert.InDelta(t, 5, distance(t, hood, spot), 1e-12, "a line of one point")
}

func TestAboveAnAreaThePlanDistanceIsZero(t *testing.T) {
	leg := []design.Point{*at(0, 0), *at(6, 0), *at(6, 2), *at(2, 2), *at(2, 6), *at(0, 6)}
	yard := source("yard", design.Placement{Outline: leg, Level: metres(0)})
	over := source("over", ground(1, 4, 2))
	assert.Zero(t, horizontal(t, yard, over))
	assert.InDelta(t, 2, distance(t, yard, over), 1e-12)
	inHollow := source("hollow", ground(4, 5, 0))
	assert.InDelta(t, 2, horizontal(t, yard, inHollow), 1e-12)
}

func TestALineStandsForAllHeights(t *testing.T) {
	south := house()[0]
	line := lotLine("lot", at(-50, -4), at(50, -4))
	high := opening("high", round(on(south, 4, 9), 0.2))
	assert.InDelta(t, 4, distance(t, high, line), 1e-12)
	assert.InDelta(t, 4, horizontal(t, line, high), 1e-12)
	unlevelled := source("x", design.Placement{At: at(0, -1)})
	assert.InDelta(t, 3, distance(t, unlevelled, line), 1e-12, "no level is needed")
	assert.InDelta(t, 6, distance(t, line, lotLine("other", at(50, 2), at(-50, 2))), 1e-12)
	_, err := New(&design.Design{}).Rise(line, high)
	assert.EqualError(t, err, "a line of the plan has no height, expected a thing with a bottom and a top edge")
	_, err = New(&design.Design{}).Height(line)
	assert.ErrorIs(t, err, errNoHeight)
}

func TestMeasureTellsWhereItRuns(t *testing.T) {
	walls := house()
	a := opening("a", round(on(walls[0], 4, 2), 0.2))
	b := source("b", roof(4, 3, 6))
	s := New(&design.Design{Walls: walls, Openings: []*design.Opening{a}, Sources: []*design.Source{b}})
	m, err := s.Measure(a, b)
	require.NoError(t, err)
	assert.True(t, m.Placed)
	assert.InDeltaSlice(t, []float64{4, 0, 2.1}, m.From[:], 1e-9)
	assert.InDeltaSlice(t, []float64{4, 3, 6}, m.To[:], 1e-9)
	m, err = s.MeasurePlan(b, a)
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{4, 3, 0}, m.From[:], 1e-9)
	assert.InDeltaSlice(t, []float64{4, 0, 0}, m.To[:], 1e-9)
}

func TestTheOutsideOfAWallLiesToItsRight(t *testing.T) {
	for i, want := range []vec{{0, -1, 0}, {1, 0, 0}, {0, 1, 0}, {-1, 0, 0}} {
		var r reading
		assert.Equal(t, want, r.onPlan(house()[i]).outward)
	}
}

func TestPointOnly(t *testing.T) {
	south := house()[0]
	s := New(&design.Design{})
	assert.True(t, s.PointOnly(source("a", on(south, 1, 1))))
	assert.True(t, s.PointOnly(source("a", ground(1, 1, 1))))
	assert.False(t, s.PointOnly(source("a", round(on(south, 1, 1), 0.1))))
	assert.False(t, s.PointOnly(source("a", design.Placement{Along: []design.Point{*at(0, 0), *at(1, 0)}})))
	assert.False(t, s.PointOnly(source("a", design.Placement{})), "it has no place")
	assert.False(t, s.PointOnly(opening("a", on(south, 1, 1))), "an opening without a size is not measured")
	assert.False(t, s.PointOnly(lotLine("a", at(0, 0), at(1, 1))))
	assert.False(t, s.PointOnly(&design.Room{}))
}

func TestOnlyPlacedThingsAreMeasured(t *testing.T) {
	south := house()[0]
	s := New(&design.Design{})
	a := source("a", on(south, 1, 1))
	for _, other := range []any{nil, &design.Room{}, (*design.Opening)(nil), "a", []int{1}} {
		_, err := s.Distance(a, other)
		assert.ErrorContains(t, err, "expected an opening, a source or a line of the design")
		_, err = s.Horizontal(other, a)
		assert.ErrorContains(t, err, "expected an opening")
		_, err = s.Rise(a, other)
		assert.ErrorContains(t, err, "expected an opening")
		_, err = s.Height(other)
		assert.ErrorContains(t, err, "expected an opening")
		assert.Nil(t, s.StatedRise(a, other))
	}
}

func TestInputsThatNoSiteCanHold(t *testing.T) {
	south := house()[0]
	fine := source("fine", on(south, 1, 1))
	flat := wall("flat", at(1, 1), at(1, 1), 0)
	cases := map[string]*design.Source{
		`level of source "far" (dryer) is +Inf m, expected at most 1e+07 m`:    source("far", ground(0, 0, math.Inf(1))),
		`at of source "far" (dryer) is 1e+300 m, expected at most 1e+07 m`:     source("far", ground(1e300, 0, 0)),
		`from_left of source "nan" (dryer) is NaN m, expected at most 1e+07 m`: source("nan", on(south, math.NaN(), 0)),
		`diameter of source "in" (dryer) is -1 m, expected no negative length`: source("in", round(on(south, 0, 0), -1)),
		`wall "flat" has no length, expected two different points`:             source("on a point", on(flat, 0, 0)),
	}
	for want, bad := range cases {
		_, err := New(&design.Design{}).Distance(fine, bad)
		assert.EqualError(t, err, want)
		_, err = New(&design.Design{}).Distance(bad, fine)
		assert.EqualError(t, err, want)
	}
}
