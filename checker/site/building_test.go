package site

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

func built(t *testing.T, walls []*design.Wall) *building {
	t.Helper()
	b := New(&design.Design{Walls: walls}).building()
	require.NoError(t, problems(b.plan, b.heights))
	return b
}

// A step outward from the middle of each wall leaves the footprint, one inward
// enters it.
func TestTheOutwardSideOfEachWall(t *testing.T) {
	for _, walls := range [][]*design.Wall{horseshoe(3), tower(7, 4, 3)} {
		b := built(t, walls)
		for i, w := range b.walls {
			middle := between(w.a, w.b, 0.5)
			_, outward := straightTo(vec{}, b.outward(i))
			assert.False(t, b.deep(middle.plusTimes(0.01, outward)), "wall %d", i)
			assert.True(t, b.deep(middle.plusTimes(-0.01, outward)), "wall %d", i)
		}
	}
}

// What is no deeper than the slack behind a wall faces it, whatever its length.
func TestFacingAWallIsAMatterOfDepth(t *testing.T) {
	b := built(t, footprint([][2]float64{{0, 0}, {100, 0}, {100, 0.1}, {0, 0.1}}, 3))
	require.InDelta(t, skin, b.slack, 1e-9)
	long, short := 0, 1
	assert.True(t, b.faces(long, vec{50, 0.5 * skin, 0}))
	assert.False(t, b.faces(long, vec{50, 2 * skin, 0}))
	assert.True(t, b.faces(short, vec{100 - 0.5*skin, 0.05, 0}))
	assert.False(t, b.faces(short, vec{100 - 2*skin, 0.05, 0}))
}

// Far from its origin a plan holds fewer digits behind the point, and walls more slack.
func TestSlackGrowsWithTheNumbersOfAPlan(t *testing.T) {
	far := footprint([][2]float64{{9e6, 0}, {9e6 + 12, 0}, {9e6 + 12, 8}, {9e6, 8}}, 3)
	assert.InDelta(t, skin+0.9e-6, built(t, far).slack, 1e-8)
}

// However long a line is, it is not clear where it cuts a corner of the house.
func TestLongLinesThatCutACorner(t *testing.T) {
	b := built(t, rectangular(12, 8, 3))
	for _, far := range []float64{10, 1000, 100_000} {
		assert.False(t, b.clear(vec{12 + far, 0.1 + far, 0}, vec{11.9 - far, -far, 0}), "%v m", far)
		assert.True(t, b.clear(vec{12 + far, far - 0.1, 0}, vec{12 - far, -0.1 - far, 0}), "%v m", far)
	}
}

// A disc on a wall can be laid flat beside a corner in line with the wall and beyond
// the disc, and nowhere else.
func TestDiscsThatCannotBeLaidFlat(t *testing.T) {
	e := end{flat: segment{vec{1, 0, 0}, vec{2, 0, 0}}, low: 1, high: 2, round: true}
	for corner, bulges := range map[vec]bool{
		{5, 0, 0}: false, {-5, 0, 0}: false, {2.1, 0, 0}: false,
		{1.9, 0, 0}: true, {5, 0.3, 0}: true, {5, -0.3, 0}: true, {1.5, 3, 0}: true,
	} {
		assert.Equal(t, bulges, e.bulges(corner), "%v", corner)
	}
	e.round = false
	assert.False(t, e.bulges(vec{1.5, 3, 0}))
}

// The fewest walls and the widest gap of a footprint.
func TestFootprintsThatAreJustAllowed(t *testing.T) {
	triangle := footprint([][2]float64{{0, 0}, {6, 0}, {0, 8}}, 9)
	a, b := source("a", on(triangle[0], 4, 2)), source("b", on(triangle[1], 3, 2))
	assert.InDelta(t, 2+3, float64(taut(t, triangle, a, b).Length), 1e-12)

	gap := rectangular(12, 8, 9)
	gap[3].To = at(0, joint)
	assert.InDelta(t, joint+skin, built(t, gap).slack, 1e-9)
	gap[3].To = at(0, 1.01*joint)
	_, err := New(&design.Design{Walls: gap}).Through(source("a", ground(-1, 4, 0)), source("b", ground(13, 4, 0)))
	assert.ErrorContains(t, err, "the footprint does not close")
}

func TestTheMostWallsOfAFootprint(t *testing.T) {
	assert.Len(t, built(t, tower(mostCorners, 5, 3)).corners, mostCorners)
}

// A line that touches a corner inside the house runs through one stretch there, and
// through another one beyond a court.
func TestStretchesIndoors(t *testing.T) {
	b := built(t, footprint([][2]float64{{0, 0}, {20, 0}, {20, 8}, {16, 8}, {16, 2}, {10, 2}, {10, 8}, {7, 8}, {7, 3}, {3, 3}, {3, 8}, {0, 8}}, 3))
	list := b.indoors(segment{vec{-1, 2.2, 0}, vec{21, 4.4, 0}}) // through 7, 3
	require.Len(t, list, 2)
	for i, want := range []stretch{{0, 10}, {16, 20}} {
		assert.InDelta(t, want.from, 22*list[i].from-1, 1e-9)
		assert.InDelta(t, want.to, 22*list[i].to-1, 1e-9)
	}
}

// A line along a wall that goes on inside, where the footprint steps out, is not clear
// in whatever direction the house stands, nor if it runs no deeper than the slack.
func TestALineThatLeavesAWallInward(t *testing.T) {
	for turn := range 100 {
		sin, cos := math.Sincos(float64(turn))
		turned := func(x, y float64) [2]float64 { return [2]float64{x*cos - y*sin, x*sin + y*cos} }
		b := built(t, footprint([][2]float64{turned(0, 0), turned(7, 0), turned(0.2, -3), turned(14, -3), turned(14, 8), turned(0, 8)}, 3))
		at := func(p [2]float64) vec { return vec{p[0], p[1], 0} }
		for _, deep := range []float64{-0.5 * skin, 0, 0.5 * skin} {
			from, along, to := at(turned(0.5, deep)), at(turned(6.5, deep)), at(turned(11, deep))
			assert.True(t, b.clear(from, along), "%d radians", turn)
			assert.False(t, b.clear(from, to), "%d radians", turn)
			assert.False(t, b.clear(to, from), "%d radians", turn)
		}
	}
}

// Paths are cut back by the radius of the disc that they end on, and stay where there
// is nothing to cut.
func TestPathsEndAtTheEdgeOfADisc(t *testing.T) {
	next := vec{3, 4, 0}
	for radius, want := range map[float64]vec{0: {}, 1: {0.6, 0.8, 0}, 9: next} {
		end := vec{}
		trim(&end, next, radius)
		assert.InDeltaSlice(t, want[:], end[:], 1e-15)
	}
	end := next
	trim(&end, next, 0)
	assert.Equal(t, next, end)
}

// Between two discs on opposite walls the string takes the shorter of both ways
// around, and climbs evenly, in both directions.
func TestAStringTakesTheShorterWayAround(t *testing.T) {
	walls := rectangular(12, 8, 50)
	for _, x := range []float64{5.9, 6.1} {
		high, low := opening("a", round(on(walls[0], x, 6), 0.2)), opening("b", round(on(walls[2], 12-x, 2), 0.2))
		around := math.Hypot(2*min(x, 12-x)+8, 4) - 0.2
		assert.InDelta(t, around, float64(taut(t, walls, high, low).Length), 1e-12)
		assert.InDelta(t, around, float64(taut(t, walls, low, high).Length), 1e-12)
		point, other := source("c", on(walls[0], x, 6)), source("d", on(walls[2], 12-x, 2))
		assert.InDelta(t, around+0.2, float64(taut(t, walls, point, other).Length), 1e-12)
		assert.InDelta(t, around+0.2, float64(taut(t, walls, other, point).Length), 1e-12)
	}
}

// One wall is low: the string leaves the roof over it and goes around a corner of
// it. Laid flat, it falls evenly along 2 m and 2 m of the walls; it crosses the edge
// at an angle of 1 in 4 on both sides.
func TestAStringOverALowWallAndAroundItsCorner(t *testing.T) {
	for low := range 4 {
		corners := [][2]float64{{0, 0}, {12, 0}, {12, 12}, {0, 12}}
		tops := []float64{20, 20, 20, 20}
		tops[low] = 3
		walls := footprint(corners, tops...)
		w, before := New(&design.Design{Walls: walls}).building().walls[low], (low+3)%4
		// beside the start of the low wall: 6 m along it, 1 m inside
		_, along := straightTo(w.a, w.b)
		p := w.a.plusTimes(6, along).plus(vec{-along[1], along[0], 0})
		flue := source("flue", roof(p[0], p[1], 3))
		hood := source("hood", on(walls[before], 12-2, 2))
		m := taut(t, walls, flue, hood)
		assert.InDelta(t, 2*math.Sqrt(17), float64(m.Length), 1e-6, "wall %d", low)
		assert.InDelta(t, 2*math.Sqrt(17), float64(taut(t, walls, hood, flue).Length), 1e-6, "wall %d", low)
		assert.Len(t, m.Path, 4)
	}
}

// The same around two corners, the second of which cannot be seen from the hood: 2 m
// and 12 m and 2 m of walls, and the roof, at 1 in 4.
func TestAStringOverALowWallAndAroundTwoCorners(t *testing.T) {
	walls := footprint([][2]float64{{0, 0}, {12, 0}, {12, 12}, {0, 12}}, 30, 30, 6, 30)
	flue := source("flue", roof(6, 11, 6))
	for _, x := range []float64{2, 10} {
		m := taut(t, walls, source("hood", on(walls[0], x, 2)), flue)
		assert.InDelta(t, 5*math.Sqrt(17), float64(m.Length), 1e-6)
		assert.Len(t, m.Path, 5)
	}
}

// From a disc in a court, over the wall beside its own, the string is the shortest of
// those from the points of its rim: it does not leave along its own wall.
func TestAStringFromADiscOverTheWallBesideIt(t *testing.T) {
	walls := horseshoe(3)
	flue := source("flue", roof(5, 1, 3))
	for _, wall := range []int{3, 5} {
		best := math.Inf(1)
		for degree := range 360 {
			sin, cos := math.Sincos(float64(degree) * math.Pi / 180)
			rim := source("rim", on(walls[wall], 2+0.2*cos, 2+0.2*sin))
			best = min(best, float64(taut(t, walls, rim, flue).Length))
		}
		hood := opening("hood", round(on(walls[wall], 2, 2), 0.4))
		length := float64(taut(t, walls, hood, flue).Length)
		assert.LessOrEqual(t, length, best+1e-6, "wall %d", wall)
		assert.GreaterOrEqual(t, length, best-1e-4, "wall %d", wall)
	}
}

// A disc that stands over the top of its wall lets go at that top: level over the
// house and 1 m down.
func TestAStringFromADiscOverTheTopOfItsWall(t *testing.T) {
	walls := rectangular(12, 8, 3)
	m := taut(t, walls, opening("hood", round(on(walls[0], 6, 2.95), 0.4)), source("vent", on(walls[2], 6, 2)))
	assert.InDelta(t, 8+1, float64(m.Length), 1e-6)
}
