package site

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

// houseLot is a site with a house of any shape and things of all kinds in all
// places. The walls have one top, or each its own.
func (d dice) houseLot() lot {
	top := d.within(2.2, 8)
	l := lot{walls: horseshoe(top)}
	middle := [2]float64{5, 1.5}
	if d.IntN(2) == 0 {
		area, _ := d.star(vec{})
		corners := make([][2]float64, len(area.corners))
		for i, c := range area.corners {
			corners[i] = [2]float64{c[0], c[1]}
		}
		l.walls, middle = footprint(corners, top), [2]float64{}
	}
	for _, w := range l.walls {
		w.Grade = metres(d.within(-1, 1))
		w.Height = metres(top - float64(*w.Grade))
	}
	if d.IntN(3) == 0 {
		for _, w := range l.walls {
			w.Height = metres(d.within(3, 8))
		}
	}
	l.things = append(d.onWalls(l.walls), d.around(l.walls, middle)...)
	return l
}

func (d dice) onWalls(walls []*design.Wall) []any {
	var things []any
	for range 4 {
		w := walls[d.IntN(len(walls))]
		length := math.Hypot(float64(w.To.X-w.From.X), float64(w.To.Y-w.From.Y))
		size := min(length/3, d.within(0.05, 0.6))
		place := on(w, d.within(size, length-size), d.within(size, float64(*w.Height)-size))
		things = append(things, opening("o", round(place, size)), window("w", sides(place, size, size)), source("s", place))
	}
	return things
}

func (d dice) around(walls []*design.Wall, middle [2]float64) []any {
	c := walls[d.IntN(len(walls))].From
	share := d.within(0, 0.5)
	x, y := middle[0]+share*(float64(c.X)-middle[0]), middle[1]+share*(float64(c.Y)-middle[1])
	yard, _ := d.star(vec{d.within(12, 20), d.within(-20, 20), 0})
	var outline []design.Point
	for _, c := range yard.corners {
		outline = append(outline, *at(c[0], c[1]))
	}
	return []any{
		source("flue", round(roof(x, y, d.within(9.1, 12)), 0.2)),
		source("bin", round(ground(d.within(-20, -11), d.within(-9, 9), d.within(-1, 1)), 0.5)),
		source("yard", design.Placement{Outline: outline, Level: metres(d.within(-1, 1))}),
		lotLine("lot", at(-30, d.within(-20, -13)), at(30, d.within(-20, -13))),
	}
}

func (l lot) site() *Site { return New(&design.Design{Walls: l.walls}) }

func (l lot) strings(t *testing.T) [][]Measurement {
	t.Helper()
	s := l.site()
	table := make([][]Measurement, len(l.things))
	for i, a := range l.things {
		for _, b := range l.things {
			m, err := s.TautMeasure(a, b)
			require.NoError(t, err)
			table[i] = append(table[i], m)
		}
	}
	return table
}

func TestStringsAreSane(t *testing.T) {
	d := newDice(30)
	through := 0
	for range 12 {
		l := d.houseLot()
		table := l.strings(t)
		for i, a := range l.things {
			for k, b := range l.things {
				m, straight := table[i][k], distance(t, a, b)
				assert.GreaterOrEqual(t, float64(m.Length), straight-1e-9, "never shorter than straight")
				assert.InDelta(t, float64(table[k][i].Length), float64(m.Length), 1e-8, "either way")
				assert.Equal(t, table[k][i].Through, m.Through)
				if m.Through {
					through++
				} else {
					assert.InDelta(t, straight, float64(m.Length), 1e-9, "straight where nothing is in the way")
				}
				drawn := 0.0
				for j := range m.Path[1:] {
					drawn += vec(m.Path[j+1]).minus(vec(m.Path[j])).length()
				}
				assert.InDelta(t, drawn, float64(m.Length), 1e-7)
			}
		}
	}
	assert.Greater(t, through, 500)
}

func TestMovingTheWholeSiteChangesNoString(t *testing.T) {
	d := newDice(31)
	quarter := turnedBy(math.Pi / 2)
	quarter.swapped = true
	for range 3 {
		l := d.houseLot()
		was := l.strings(t)
		turned := l
		turned.walls = append(slices.Clone(l.walls[2:]), l.walls[:2]...)
		for _, same := range []lot{
			turned, quarter.of(l), mirror().of(l),
			shiftedBy(d.within(-99, 99), d.within(-99, 99), d.within(-9, 9)).of(l),
			turnedBy(d.within(0, 7)).of(l),
		} {
			for i, row := range same.strings(t) {
				for k, m := range row {
					require.InDelta(t, float64(was[i][k].Length), float64(m.Length), 1e-7)
				}
			}
		}
	}
}

// A string between two ends is no longer than one by way of a point, when all
// walls have one top.
func TestNoStringByAnotherPlaceIsShorter(t *testing.T) {
	d := newDice(32)
	for range 6 {
		l := d.houseLot()
		top := *l.walls[0].Grade + *l.walls[0].Height
		for _, w := range l.walls {
			*w.Height = top - *w.Grade
		}
		table := l.strings(t)
		length := func(i, k int) float64 { return float64(table[i][k].Length) }
		for via, thing := range l.things {
			if s, ok := thing.(*design.Source); !ok || s.Outline != nil || s.Diameter != nil {
				continue // not a point
			}
			for i := range l.things {
				for k := range l.things {
					require.LessOrEqual(t, length(i, k), length(i, via)+length(via, k)+1e-7)
				}
			}
		}
	}
}

// Two discs are as far apart as the nearest of their points, with walls that a
// string cannot be laid flat beside as well.
func TestAStringToADiscIsTheShortestToItsPoints(t *testing.T) {
	d := newDice(33)
	rim := func(w *design.Wall, x, z, radius float64) []any {
		points := []any{source("p", on(w, x, z))}
		const n = 72
		for i := range n {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
			points = append(points, source("p", on(w, x+radius*cos, z+radius*sin)))
		}
		return points
	}
	for range 40 {
		walls := horseshoe(d.within(3, 12))
		s := New(&design.Design{Walls: walls})
		w, v := walls[d.IntN(8)], walls[3+d.IntN(3)]
		x, z, u, y := d.within(0.8, 2.2), d.within(0.5, 2.5), d.within(0.8, 3.2), d.within(0.5, 2.5)
		r := d.within(0.05, 0.4)
		got, err := s.Taut(opening("a", round(on(w, x, z), 2*r)), source("b", on(v, u, y)))
		require.NoError(t, err)
		best := math.Inf(1)
		for _, p := range rim(w, x, z, r) {
			length, err := s.Taut(p, source("b", on(v, u, y)))
			require.NoError(t, err)
			best = min(best, float64(length))
		}
		spacing := r * (1 - math.Cos(math.Pi/72))
		assert.LessOrEqual(t, float64(got), best+1e-8)
		if w != v {
			assert.GreaterOrEqual(t, float64(got), best-spacing-1e-8)
		}
	}
}

// A higher wall never makes a string shorter.
func TestHigherWallsNeverShortenAString(t *testing.T) {
	d := newDice(34)
	for range 5 {
		l := d.houseLot()
		was := l.strings(t)
		w := l.walls[d.IntN(len(l.walls))]
		*w.Height += *metres(d.within(0, 0.9))
		if d.IntN(2) == 0 {
			w = l.walls[0]
			*w.Height += 0.5
		}
		for i, row := range l.strings(t) {
			for k, m := range row {
				require.GreaterOrEqual(t, float64(m.Length), float64(was[i][k].Length)-1e-7)
			}
		}
	}
}

// Along two long walls that meet at a right angle, moving away from the corner by
// a step lengthens a level string by that step.
func TestMovingAwayFromTheCornerLengthensAString(t *testing.T) {
	walls := rectangular(500, 500, 100)
	s := New(&design.Design{Walls: walls})
	d := newDice(35)
	for range 200 {
		x, y, step := d.within(0.2, 9), d.within(0.2, 9), d.within(0, 9)
		a := opening("a", round(on(walls[0], 500-x, 2), 0.2))
		was, err := s.Taut(a, opening("b", round(on(walls[1], y, 2), 0.2)))
		require.NoError(t, err)
		now, err := s.Taut(a, opening("b", round(on(walls[1], y+step, 2), 0.2)))
		require.NoError(t, err)
		assert.InDelta(t, step, float64(now-was), 1e-11)
	}
}

// A wall that is given in two parts is the same building, and so is one whose ends
// are rounded to the millimetre, but for about that much.
func TestWallsGivenInOtherWaysAreTheSameBuilding(t *testing.T) {
	whole := [][2]float64{{0, 0}, {12, 0}, {12, 8}, {0, 8}}
	parts := [][2]float64{{0, 0}, {5, 0}, {12, 0}, {12, 3}, {12, 8}, {0, 8}}
	d := newDice(36)
	for range 60 {
		top, x, y := d.within(3, 6), d.within(6, 11), d.within(3.5, 7)
		walls, split, rough := footprint(whole, top), footprint(parts, top), footprint(whole, top)
		rough[0].To, rough[1].From = at(12.001, 0.001), at(11.999, -0.001)
		rough[2].To, rough[3].From = at(0.002, 8.001), at(-0.001, 7.999)
		for _, kind := range []func(string, design.Placement) any{
			func(id string, p design.Placement) any { return opening(id, round(p, 0.3)) },
			func(id string, p design.Placement) any { return window(id, sides(p, 0.5, 0.7)) },
		} {
			want := taut(t, walls, kind("a", on(walls[0], x, 2)), kind("b", on(walls[1], y, 2.4)))
			got := taut(t, split, kind("a", on(split[1], x-5, 2)), kind("b", on(split[3], y-3, 2.4)))
			assert.InDelta(t, float64(want.Length), float64(got.Length), 1e-8)
			m, err := New(&design.Design{Walls: rough}).TautMeasure(kind("a", on(rough[0], x, 2)), kind("b", on(rough[1], y, 2.4)))
			require.NoError(t, err)
			assert.True(t, m.Through)
			assert.InDelta(t, float64(want.Length), float64(m.Length), 0.01)
		}
	}
}

// What reaches into the footprint is reached where it comes out, however the house
// is turned.
func TestTurnedHousesAreReachedWhereTheyAreCut(t *testing.T) {
	d := newDice(37)
	walls := rectangular(12, 8, 9)
	l := lot{walls: walls, things: []any{
		source("a", on(walls[0], 10, 1)),
		source("meter", round(ground(12, 3, 1), 1)),
		source("court", design.Placement{Level: metres(1), Outline: []design.Point{*at(9, 4), *at(20, 4), *at(20, 20), *at(9, 20), *at(9, 12), *at(11, 10)}}),
		source("pipe", design.Placement{Level: metres(1), Along: []design.Point{*at(6, 3), *at(16, 8)}}),
		lotLine("behind", at(6, 3), at(16, 8)),
		source("plaza", design.Placement{Level: metres(1), Outline: []design.Point{*at(6, 3), *at(16, 8), *at(16, 12)}}),
	}}
	want := []float64{0, 2 + 2.5, 2 + 4, 2 + 6, 2 + 6, 2 + 6}
	for range 20 {
		for i, m := range turnedBy(d.within(0, 7)).of(l).strings(t)[0] {
			assert.InDelta(t, want[i], float64(m.Length), 1e-8)
		}
	}
}
