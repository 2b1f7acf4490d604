package site

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

func rectangular(x, y, top float64) []*design.Wall {
	return footprint([][2]float64{{0, 0}, {x, 0}, {x, y}, {0, y}}, top)
}

// horseshoe is open to the north: a court of 4 m by 5 m between two wings.
func horseshoe(top float64) []*design.Wall {
	return footprint([][2]float64{{0, 0}, {10, 0}, {10, 8}, {7, 8}, {7, 3}, {3, 3}, {3, 8}, {0, 8}}, top)
}

// taut measures a string and checks that what is drawn is as long as it says and
// stays outside.
func taut(t *testing.T, walls []*design.Wall, a, b any) Measurement {
	t.Helper()
	s := New(&design.Design{Walls: walls})
	m, err := s.TautMeasure(a, b)
	require.NoError(t, err)
	require.True(t, m.Placed)
	drawn := 0.0
	for i := range m.Path[1:] {
		from, to := vec(m.Path[i]), vec(m.Path[i+1])
		drawn += to.minus(from).length()
		assert.False(t, s.building().stops(segment{from, to}, s.building().low-1e-6), "from %v to %v", from, to)
	}
	assert.InDelta(t, float64(m.Length), drawn, 1e-7, "%v", m.Path)
	assert.Equal(t, m.From, m.Path[0])
	assert.Equal(t, m.To, m.Path[len(m.Path)-1])
	return m
}

func TestAStringAroundAnOutsideCorner(t *testing.T) {
	walls := rectangular(12, 8, 9)
	a := opening("a", round(on(walls[0], 10, 2), 0.2))
	b := opening("b", round(on(walls[1], 3, 3.5), 0.3))
	m := taut(t, walls, a, b)
	assert.InDelta(t, math.Hypot(2+3, 1.5)-0.1-0.15, float64(m.Length), 1e-12, "both walls laid flat")
	assert.True(t, m.Through)
	require.Len(t, m.Path, 3)
	assert.InDeltaSlice(t, []float64{12, 0, 2 + 1.5*2/5}, m.Path[1][:], 1e-12)

	pane := window("pane", sides(on(walls[1], 3, 6), 1, 2))
	m = taut(t, walls, a, pane)
	assert.InDelta(t, math.Hypot(2+2.5, 3)-0.1, float64(m.Length), 1e-12, "to the near lower corner of the pane")
	beside := window("beside", sides(on(walls[1], 3, 2), 1, 2))
	assert.InDelta(t, 2+2.5-0.1, float64(taut(t, walls, a, beside).Length), 1e-12, "level to its near side")
}

func TestAStringAcrossAnInsideCorner(t *testing.T) {
	walls := horseshoe(9)
	a := opening("a", round(on(walls[3], 3, 2), 0.2)) // 7, 5
	b := opening("b", round(on(walls[4], 3, 2), 0.2)) // 4, 3
	m := taut(t, walls, a, b)
	assert.InDelta(t, distance(t, a, b), float64(m.Length), 1e-12)
	assert.False(t, m.Through)
	opposite := opening("c", round(on(walls[5], 1, 2), 0.2)) // 3, 4
	assert.InDelta(t, distance(t, a, opposite), float64(taut(t, walls, a, opposite).Length), 1e-12, "across the court")
}

func TestAStringIntoACourt(t *testing.T) {
	walls := horseshoe(9)
	a, b := source("a", on(walls[1], 7, 2)), source("b", on(walls[5], 2, 3)) // 10, 7 and 3, 5
	m := taut(t, walls, a, b)
	assert.InDelta(t, math.Hypot(1+3+5, 1), float64(m.Length), 1e-12, "to 10, 8, to 7, 8, and straight to 3, 5")
	assert.Len(t, m.Path, 4)

	high := horseshoe(20)
	south, court := source("a", on(high[0], 2, 2)), source("b", on(high[4], 3, 2)) // 2, 0 and 4, 3
	m = taut(t, high, south, court)
	assert.InDelta(t, 2+8+3+math.Hypot(1, 5), float64(m.Length), 1e-9, "around the west wing")
	low := horseshoe(2.5)
	south, court = source("a", on(low[0], 2, 2)), source("b", on(low[4], 3, 2))
	m = taut(t, low, south, court)
	assert.InDelta(t, math.Hypot(0.5+3+0.5, 2), float64(m.Length), 1e-9, "over the low roof, walls laid flat")
}

// A string over a flat roof is a straight line once the walls are laid flat beside
// it.
func TestAStringOverTheRoof(t *testing.T) {
	walls := rectangular(12, 8, 3)
	hood := opening("a", round(on(walls[0], 4, 2), 0.2))
	m := taut(t, walls, hood, source("flue", round(roof(6, 3, 3), 0.3)))
	assert.InDelta(t, math.Hypot(2, 1+3)-0.25, float64(m.Length), 1e-6)
	assert.True(t, m.Through)
	assert.Len(t, m.Path, 3)

	m = taut(t, walls, hood, opening("b", round(on(walls[2], 7, 1.5), 0.2))) // 5, 8
	assert.InDelta(t, math.Hypot(1, 1+8+1.5)-0.2, float64(m.Length), 1e-6)
	assert.Len(t, m.Path, 4)

	near := opening("a", round(on(walls[0], 6, 2.5), 0.2))
	m = taut(t, walls, near, opening("b", round(on(walls[1], 6, 2.5), 0.2)))
	assert.InDelta(t, math.Hypot(6+0.5, 6+0.5)-0.2, float64(m.Length), 1e-6, "across the corner of the roof, not around it")
}

func TestAStringToWhatStandsHighOnTheRoof(t *testing.T) {
	walls := rectangular(12, 8, 3)
	hood := source("a", on(walls[0], 4, 2))
	m := taut(t, walls, hood, source("flue", roof(4, 3, 7)))
	assert.InDelta(t, 1+math.Hypot(3, 4), float64(m.Length), 1e-6, "straight up, and from the edge through the air")
	lot := lotLine("lot", at(-9, 10), at(30, 10))
	m = taut(t, walls, hood, lot)
	assert.InDelta(t, 1+8+2, float64(m.Length), 1e-6, "up, and level over the house")
	assert.InDelta(t, 10, distance(t, hood, lot), 1e-12)
	skylight := window("skylight", sides(roof(6, 4, 3), 2, 1))
	assert.InDelta(t, math.Hypot(1, 1+3.5), float64(taut(t, walls, hood, skylight).Length), 1e-6)
	flue, vent := source("flue", roof(4, 3, 3.2)), source("vent", roof(9, 6, 4))
	m = taut(t, walls, flue, vent)
	assert.InDelta(t, distance(t, flue, vent), float64(m.Length), 1e-12)
	assert.False(t, m.Through)
}

// Two walls in one line, with a bay between them that hides the one from the other.
func TestAStringAroundABay(t *testing.T) {
	walls := footprint([][2]float64{{0, 0}, {4, 0}, {4, -2}, {8, -2}, {8, 0}, {12, 0}, {12, 8}, {0, 8}}, 50)
	around := 4 + math.Hypot(4, 2) + 3
	m := taut(t, walls, source("a", on(walls[0], 2, 2)), source("b", on(walls[5], 3, 2)))
	assert.InDelta(t, math.Hypot(2, 2)+around, float64(m.Length), 1e-12)
	m = taut(t, walls, opening("a", round(on(walls[0], 2, 2), 0.4)), opening("b", round(on(walls[5], 3, 2), 0.2)))
	assert.InDelta(t, math.Hypot(1.8, 2)+around-0.1, float64(m.Length), 1e-8, "level from the side of the disc")
	m = taut(t, walls, opening("a", round(on(walls[0], 2, 2), 0.4)), opening("c", round(on(walls[4], 3, 2), 0.4)))
	assert.InDelta(t, math.Hypot(1.8, 2)+4+math.Hypot(2.8, 2), float64(m.Length), 1e-8)
}

// The straight line between two vents behind parapets meets these where it crosses
// a court; over them, no string is known to be longer.
func TestAStringBetweenTwoWings(t *testing.T) {
	walls := horseshoe(4)
	a, b := source("a", roof(1.5, 6, 3.2)), source("b", roof(8.5, 6, 3.4))
	m, err := New(&design.Design{Walls: walls}).TautMeasure(a, b)
	require.NoError(t, err)
	assert.True(t, m.Through)
	assert.InDelta(t, distance(t, a, b), float64(m.Length), 1e-12)
}

func TestALineThroughAnInsideCornerIsInside(t *testing.T) {
	b := New(&design.Design{Walls: horseshoe(4)}).building()
	inside := b.indoors(segment{vec{2, -2, 0}, vec{12, 8, 0}}) // by way of 7, 3
	require.Len(t, inside, 1)
	assert.InDelta(t, 0.2, inside[0].from, 1e-12)
	assert.InDelta(t, 0.8, inside[0].to, 1e-12)
	assert.Empty(t, b.indoors(segment{vec{-3, 0, 0}, vec{14, 0, 0}}), "along the south wall")
	assert.Empty(t, b.indoors(segment{vec{8, 10, 0}, vec{2, 10, 0}}), "beside it")
	assert.Len(t, b.indoors(segment{vec{-1, 6, 0}, vec{11, 6, 0}}), 2, "through both wings")
}

// H. E. Dudeney's spider and fly, 1903: a room of 30 ft by 12 ft by 12 ft, and 40 ft
// over five of its sides. Without the floor it is the square root of 37^2 + 17^2,
// the third of the ways that he compares; all from memory. Outside a box, nothing is
// shorter than along its sides.
func TestTheSpiderAndTheFly(t *testing.T) {
	walls := rectangular(30, 12, 12)
	spider, fly := source("spider", on(walls[1], 6, 11)), source("fly", on(walls[3], 6, 1))
	assert.InDelta(t, math.Hypot(37, 17), float64(taut(t, walls, spider, fly).Length), 1e-6)
	both := source("fly", on(walls[3], 6, 11))
	assert.InDelta(t, 1+30+1, float64(taut(t, walls, spider, both).Length), 1e-6)
}

func TestAStringOverWallsOfDifferentHeights(t *testing.T) {
	corners := [][2]float64{{0, 0}, {12, 0}, {12, 8}, {0, 8}}
	walls := footprint(corners, 3, 9, 5, 9)
	south, north := source("a", on(walls[0], 4, 2)), source("b", on(walls[2], 8, 4))
	assert.InDelta(t, 1+math.Hypot(8, 2)+1, float64(taut(t, walls, south, north).Length), 1e-6)
	high := footprint(corners, 6, 3, 3, 3)
	south, north = source("a", on(high[0], 4, 5)), source("b", on(high[2], 8, 2))
	m := taut(t, high, south, north)
	assert.InDelta(t, 1+math.Hypot(8, 3)+1, float64(m.Length), 1e-6, "down from the high wall")
	inside := source("flue", roof(4, 4, 3.5))
	m = taut(t, high, source("a", on(high[0], 4, 5.5)), inside)
	assert.InDelta(t, 0.5+math.Hypot(4, 2.5), float64(m.Length), 1e-6, "over the high wall, though both lie above the low ones")
	assert.True(t, m.Through)
}

// Around a corner and over the low wall beyond it. Laid flat, the two walls and the roof
// make the string the long side of a triangle, the first one of 5 m by 3 m.
func TestAStringAroundACornerAndOverAWall(t *testing.T) {
	walls := footprint([][2]float64{{0, 0}, {12, 0}, {12, 8}, {0, 8}}, 9, 3, 9, 9)
	hood, vent := source("hood", on(walls[0], 11, 1)), source("vent", roof(11, 4, 3))
	for range 2 {
		assert.InDelta(t, math.Sqrt(34), float64(taut(t, walls, hood, vent).Length), 1e-6)
		hood, vent = vent, hood
	}
	walls = footprint([][2]float64{{0, 0}, {12, 0}, {12, 8}, {0, 8}}, 9, 9, 9, 3)
	bin, vent := source("bin", round(ground(3, -1, 0), 1)), source("vent", roof(1, 4, 3))
	assert.InDelta(t, math.Hypot(math.Sqrt(10)-0.5+4, 3+1), float64(taut(t, walls, bin, vent).Length), 1e-6)
}

// What lies behind a parapet is lower than the tops of the walls.
func TestAStringOverAParapet(t *testing.T) {
	walls := rectangular(12, 8, 4)
	hood, vent := source("a", on(walls[0], 4, 3)), source("b", roof(4, 2, 3.2))
	m, err := New(&design.Design{Walls: walls}).TautMeasure(hood, vent)
	require.NoError(t, err)
	assert.InDelta(t, 1+math.Hypot(2, 0.8), float64(m.Length), 1e-6)
	other := source("c", roof(9, 6, 3.4))
	m, err = New(&design.Design{Walls: walls}).TautMeasure(vent, other)
	require.NoError(t, err)
	assert.InDelta(t, distance(t, vent, other), float64(m.Length), 1e-12)
	assert.False(t, m.Through)
}

func TestAStringToTheGround(t *testing.T) {
	walls := rectangular(12, 8, 9)
	hood := opening("a", round(on(walls[0], 10, 1), 0.2))
	drive := source("drive", design.Placement{
		Outline: []design.Point{*at(12.5, 4), *at(20, 4), *at(20, 20), *at(12.5, 20)}, Level: metres(0),
	})
	m := taut(t, walls, hood, drive)
	assert.InDelta(t, math.Hypot(2+math.Hypot(0.5, 4), 1)-0.1, float64(m.Length), 1e-9, "around the corner to the near corner of the drive")
	street := source("street", design.Placement{
		Along: []design.Point{*at(-20, 12), *at(9, 12), *at(40, 20)}, Level: metres(1),
	})
	m = taut(t, walls, hood, street)
	way := math.Inf(1)
	for x := 9.0; x < 18; x += 0.001 { // along the second part of the street, from the north-east corner
		way = min(way, 2+8+math.Hypot(x-12, 4+(x-9)*8/31))
	}
	assert.InDelta(t, way-0.1, float64(m.Length), 1e-6)
	bin := source("bin", round(ground(14, 5, 1), 1))
	m = taut(t, walls, hood, bin)
	assert.InDelta(t, 2-0.1+math.Hypot(2, 5)-0.5, float64(m.Length), 1e-9)
}

// Drawings of the ground are rough: what they show may reach under the house.
func TestAStringToWhatReachesIntoTheFootprint(t *testing.T) {
	walls := rectangular(12, 8, 9)
	hood := source("a", on(walls[0], 10, 1))
	meter := source("meter", round(ground(12, 3, 1), 1))
	assert.InDelta(t, 2+2.5, float64(taut(t, walls, hood, meter).Length), 1e-9, "to where the wall cuts the disc")
	court := source("court", design.Placement{
		Outline: []design.Point{*at(9, 4), *at(20, 4), *at(20, 20), *at(9, 20), *at(9, 12), *at(11, 10)}, Level: metres(0),
	})
	assert.InDelta(t, math.Hypot(2+4, 1), float64(taut(t, walls, hood, court).Length), 1e-9, "to where it comes out of the east wall")
	yard := source("yard", design.Placement{
		Outline: []design.Point{*at(-9, -9), *at(30, -9), *at(30, 30), *at(-9, 30)}, Level: metres(0),
	})
	m := taut(t, walls, hood, yard)
	assert.InDelta(t, 1, float64(m.Length), 1e-12, "straight down")
	flue := source("flue", roof(6, 2, 9))
	assert.InDelta(t, 2+9, float64(taut(t, walls, flue, yard).Length), 1e-6, "over the edge and down")
	pipe := source("pipe", design.Placement{Along: []design.Point{*at(6, 4), *at(20, 4)}, Level: metres(1)})
	assert.InDelta(t, 2+4, float64(taut(t, walls, hood, pipe).Length), 1e-9, "to where it comes out of the east wall")
	split := lotLine("split", at(6, -20), at(6, 30))
	assert.InDelta(t, 4, float64(taut(t, walls, hood, split).Length), 1e-12, "a lot line through the house")
	behind := lotLine("behind", at(12, 4), at(12, 30))
	assert.InDelta(t, 2+4, float64(taut(t, walls, hood, behind).Length), 1e-9, "a lot line along a wall")
}

func TestLinesAreMeasuredOnThePlan(t *testing.T) {
	walls := rectangular(12, 8, 3)
	front, rear := lotLine("front", at(-9, -3), at(20, -3)), lotLine("rear", at(-9, 11), at(20, 11))
	m := taut(t, walls, front, rear)
	assert.Equal(t, q.Length(14), m.Length)
	assert.False(t, m.Through, "above the house")
}

func TestOneWallNeedsNoPlanForAString(t *testing.T) {
	south := bareWall("south")
	a := opening("a", round(on(south, 2, 1), 0.2))
	b := opening("b", round(on(south, 5.2, 1), 0.2))
	m, err := New(&design.Design{}).TautMeasure(a, b)
	require.NoError(t, err)
	assert.InDelta(t, 3, float64(m.Length), 1e-12)
	assert.False(t, m.Placed)
	assert.Empty(t, m.Path)
	b.FromLeft = nil
	_, err = New(&design.Design{}).Taut(a, b)
	assert.Equal(t, []string{`from_left of intake "b"`}, keys(t, err))
}

func TestAStatedDistanceStandsInForAString(t *testing.T) {
	walls := rectangular(12, 8, 3)
	a, b := opening("a", round(on(walls[0], 11, 1), 0.2)), opening("b", round(on(walls[1], 1, 1), 0.2))
	drawing := stated("b", "a")
	drawing.Distance = metres(2.5)
	s := New(&design.Design{Walls: walls, StatedDistances: []*design.StatedDistance{drawing}})
	m, err := s.TautMeasure(a, b)
	require.NoError(t, err)
	assert.Equal(t, q.Length(2.5), m.Length)
	assert.Same(t, drawing, m.Stated)
	assert.False(t, m.Through)
	through, err := s.Through(a, b)
	require.NoError(t, err)
	assert.False(t, through)
	a.FromLeft, walls[2].Height = nil, nil
	got, err := New(&design.Design{Walls: walls, StatedDistances: []*design.StatedDistance{drawing}}).Taut(a, b)
	require.NoError(t, err)
	assert.Equal(t, q.Length(2.5), got)
}

func TestThrough(t *testing.T) {
	walls := rectangular(12, 8, 3)
	s := New(&design.Design{Walls: walls})
	through := func(a, b any) bool {
		found, err := s.Through(a, b)
		require.NoError(t, err)
		return found
	}
	hood := opening("a", round(on(walls[0], 11, 1), 0.2))
	assert.True(t, through(hood, opening("b", round(on(walls[1], 1, 1), 0.2))))
	assert.False(t, through(hood, opening("b", round(on(walls[0], 1, 1), 0.2))))
	assert.False(t, through(hood, source("b", ground(13, -0.2, 0))))
	assert.True(t, through(hood, source("b", ground(13, 5, 0))))
	assert.True(t, through(source("a", ground(6, -1, 0)), source("b", ground(6, 9, 0))))
	assert.False(t, through(source("a", ground(6, -1, 5)), source("b", ground(6, 9, 5))), "above the house")
	assert.False(t, through(source("a", ground(-1, 0, 0)), source("b", ground(15, 0, 0))), "along the wall")
	_, err := s.Through(hood, &design.Room{})
	assert.ErrorContains(t, err, "expected an opening, a source or a line of the design")
}
