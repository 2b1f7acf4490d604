package site

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

func area(corners ...vec) region { return region{corners, up} }

// Only plain areas of four corners at most stay whole; a fifth corner or a hollow
// takes an area apart into its sides.
func TestAreasAreTakenApart(t *testing.T) {
	for name, c := range map[string]struct {
		whole piece
		parts int
	}{
		"triangle":  {area(vec{}, vec{4, 0, 0}, vec{0, 3, 0}), 1},
		"square":    {area(vec{}, vec{4, 0, 0}, vec{4, 4, 0}, vec{0, 4, 0}), 1},
		"clockwise": {area(vec{}, vec{0, 4, 0}, vec{4, 4, 0}, vec{4, 0, 0}), 1},
		"dart":      {area(vec{}, vec{4, 0, 0}, vec{1, 1, 0}, vec{0, 4, 0}), 4},
		"pentagon":  {area(vec{}, vec{4, 0, 0}, vec{5, 3, 0}, vec{2, 5, 0}, vec{-1, 3, 0}), 5},
		"pane":      {region{[]vec{{}, {4, 0, 0}, {4, 0, 2}, {0, 0, 2}}, north}, 1},
		"disc":      {disc{vec{}, up, 1}, 1},
	} {
		parts := withoutHollows(c.whole)
		assert.Len(t, parts, c.parts, name)
		if c.parts == 1 {
			assert.Equal(t, c.whole, parts[0], name)
		}
	}
}

// A line of the plan stands upright over all heights, also one without length.
func TestALineIsAnUprightArea(t *testing.T) {
	b := built(t, rectangular(12, 8, 3))
	for _, to := range []vec{{5, -9, 0}, {-5, -12, 0}, {-5, -3, 0}, {-5, -9, 0}} {
		e := b.curtain(segment{vec{-5, -9, 0}, to}, [2]float64{-1, 6})[0]
		r := e.body.(region)
		assert.InDelta(t, 1, r.normal.length(), 1e-15, "to %v", to)
		for _, c := range r.corners {
			assert.InDelta(t, 0, c.minus(r.corners[0]).dot(r.normal), 1e-12, "to %v", to)
		}
		assert.Equal(t, [2]float64{-1, 6}, [2]float64{r.corners[0][2], r.corners[3][2]})
	}
}

// What lies just as high as the lowest wall is above the house.
func TestAStringToWhatLiesAtTheTopOfTheWalls(t *testing.T) {
	walls := rectangular(12, 8, 3)
	hood := source("a", on(walls[0], 6, 2))
	m := taut(t, walls, hood, source("vent", ground(6, 3, 3)))
	assert.InDelta(t, 1+3, float64(m.Length), 1e-6)
}

// All walls but the east one are 6 m high. What stands west of the house is not above
// it, though it is higher than the east wall: the string climbs to the west wall, falls
// evenly to the top of the east wall at 3 m, and hangs down 1 m.
func TestAStringFromBesideTheHouseClimbsItsWalls(t *testing.T) {
	walls := footprint([][2]float64{{0, 0}, {12, 0}, {12, 8}, {0, 8}}, 6, 3, 6, 6)
	hood := source("hood", on(walls[1], 4, 2))
	over := math.Hypot(12, 3) + 1
	fence := design.Placement{Along: []design.Point{*at(-2, 1), *at(-2, 7)}, Level: metres(3.5)}
	for name, c := range map[string]struct {
		place design.Placement
		climb float64
	}{
		"point":            {ground(-2, 4, 3.5), math.Hypot(2, 2.5)},
		"fence":            {fence, math.Hypot(2, 2.5)},
		"disc":             {round(ground(-2, 4, 3.5), 1), math.Hypot(1.5, 2.5)},
		"disc at the wall": {round(ground(-1, 4, 3.5), 2), 2.5},
		"square":           {sides(ground(-2, 4, 3.5), 1, 1), math.Hypot(1.5, 2.5)},
	} {
		s := New(&design.Design{Walls: walls})
		m, err := s.TautMeasure(source("a", c.place), hood)
		require.NoError(t, err)
		assert.InDelta(t, c.climb+over, float64(m.Length), 1e-6, name)
	}
}

// A pool of five corners reaches under the south wall. From the roof edge a string
// hangs straight down onto the wall above its middle.
func TestAStringToAPoolUnderAWall(t *testing.T) {
	walls := rectangular(12, 8, 3)
	pool := design.Placement{Level: metres(0), Outline: []design.Point{*at(4, -2), *at(8, -2), *at(8, 2), *at(6, 3), *at(4, 2)}}
	s := New(&design.Design{Walls: walls})
	m, err := s.TautMeasure(source("flue", roof(6, 1, 3)), source("pool", pool))
	require.NoError(t, err)
	assert.InDelta(t, 1+3, float64(m.Length), 1e-6)
}
