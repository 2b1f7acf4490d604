package site

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

func TestAllThatAStringNeedsIsNamedAtOnce(t *testing.T) {
	south, east, north := bareWall("south"), wall("east", at(12, 0), at(12, 8), 0), wall("north", at(12, 8), at(0, 0), 0)
	a := opening("a", design.Placement{Wall: &design.Link[design.Wall]{To: south}, FromLeft: metres(1), Diameter: metres(0.2)})
	b := source("b", on(east, 3, 1))
	s := New(&design.Design{Walls: []*design.Wall{south, east, north}})
	want := []string{
		`from of wall "south"`, `to of wall "south"`, `grade of wall "south"`, `above_grade of intake "a"`,
		`height of wall "south"`, `height of wall "east"`, `height of wall "north"`,
	}
	_, err := s.Taut(a, b)
	assert.Equal(t, want, keys(t, err))
	_, err = s.Through(a, b)
	assert.Equal(t, want, keys(t, err))
}

func TestTopsAreAskedForWhereTheyCount(t *testing.T) {
	walls := rectangular(12, 8, 3)
	walls[1].Height, walls[3].Grade = nil, nil
	s := New(&design.Design{Walls: walls})
	hood := opening("a", round(on(walls[0], 11, 1), 0.2))
	got, err := s.Taut(hood, source("b", ground(13, -0.2, 0)))
	require.NoError(t, err)
	assert.Positive(t, got)
	_, err = s.Taut(hood, source("b", ground(13, 5, 0)))
	assert.Equal(t, []string{`height of wall "wall 1"`, `grade of wall "wall 3"`}, keys(t, err))
	unlevelled := source("c", design.Placement{At: at(4, -5)})
	got, err = s.Taut(unlevelled, lotLine("lot", at(-9, -7), at(30, -7)))
	require.NoError(t, err)
	assert.InDelta(t, 2, float64(got), 1e-12, "no height is needed")
	_, err = s.Taut(unlevelled, lotLine("lot", at(-9, 9), at(30, 9)))
	assert.Contains(t, keys(t, err), `level of source "c" (dryer)`)
}

func TestFootprintsThatNoStringCanGoAround(t *testing.T) {
	square := [][2]float64{{0, 0}, {12, 0}, {12, 8}, {0, 8}}
	open, clockwise := footprint(square, 3), footprint([][2]float64{{0, 0}, {0, 8}, {12, 8}, {12, 0}}, 3)
	open[1].To = at(12, 7.5)
	long := footprint(square, 3)
	for i := range 200 {
		long = append(long, wall("more", at(float64(i), 0), at(float64(i+1), 0), 0))
	}
	flat := footprint(square, 3)
	flat[2].To = flat[2].From
	crossed := footprint([][2]float64{{0, 0}, {12, 0}, {12, 8}, {6, -1}, {0, 8}}, 3)
	folded := footprint([][2]float64{{0, 0}, {12, 0}, {12, 8}, {12, 4}, {0, 8}}, 3)
	thin := footprint([][2]float64{{0, 0}, {8, 0}, {4, 0}}, 3)
	a, b := source("a", ground(-1, 4, 0)), source("b", ground(13, 4, 0))
	cases := map[string][]*design.Wall{
		`the footprint has 2 walls, expected 3 or more that close`:                                    footprint(square, 3)[:2],
		`the footprint does not close: wall "wall 1" ends 0.5 m from where wall "wall 2" begins`:      open,
		`wall "wall 2" crosses or touches wall "wall 0", expected walls that meet at their ends only`: crossed,
		`wall "wall 1" crosses or touches wall "wall 2", expected walls that meet at their ends only`: folded,
		`wall "wall 0" crosses or touches wall "wall 1", expected walls that meet at their ends only`: thin,
		`the walls run clockwise seen from above, expected counter-clockwise`:                         clockwise,
		`the footprint has 204 walls, expected at most 200 to lead a string around`:                   long,
		`wall "wall 2" has no length, expected two different points`:                                  flat,
	}
	for want, walls := range cases {
		_, err := New(&design.Design{Walls: walls}).Taut(a, b)
		assert.EqualError(t, err, want)
	}
	_, err := New(&design.Design{}).Taut(a, b)
	assert.Equal(t, []string{"wall of design"}, keys(t, err))
}

func TestWhatStandsInsideTheHouseHasNoString(t *testing.T) {
	walls := rectangular(12, 8, 3)
	a, b := source("a", ground(-1, 4, 0)), source("b", ground(6, 4, 0))
	_, err := New(&design.Design{Walls: walls}).Taut(a, b)
	assert.EqualError(t, err, `no string leads from source "a" (dryer) to source "b" (dryer) outside the building, expected both beside the footprint or above it`)
}
