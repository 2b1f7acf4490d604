package site

import (
	"fmt"
	"math"
	"testing"

	"github.com/ventlint/ventlint/checker/design"
)

func BenchmarkDistance(b *testing.B) {
	walls := house()
	hood := opening("hood", round(on(walls[0], 4, 2), 0.2))
	cases := []struct {
		name  string
		other any
	}{
		{"hood on the same wall", opening("o", round(on(walls[0], 8, 3), 0.2))},
		{"hood around a corner", opening("o", round(on(walls[1], 3, 3), 0.2))},
		{"window on the same wall", window("w", sides(on(walls[0], 8, 2), 1, 1.2))},
		{"window around a corner", window("w", sides(on(walls[1], 3, 2), 1, 1.2))},
		{"flue on the roof", source("s", round(roof(3, 3, 6), 0.15))},
		{"point on the ground", source("s", ground(3, -3, 0))},
		{"street", source("s", design.Placement{Along: []design.Point{*at(-9, -9), *at(0, -9), *at(9, -12)}, Level: metres(0)})},
		{"driveway", source("s", design.Placement{Outline: []design.Point{*at(0, -9), *at(4, -9), *at(4, -2), *at(0, -2)}, Level: metres(0)})},
		{"lot line", lotLine("l", at(-9, -9), at(20, -9))},
	}
	for _, c := range cases {
		b.Run(c.name, func(b *testing.B) {
			s := New(&design.Design{Openings: []*design.Opening{hood}})
			s.places[c.other.(design.Placed)] = new(newPlace(c.other.(design.Placed), notListed))
			for b.Loop() {
				if _, err := s.Distance(hood, c.other); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkWholeSite prepares a site and measures 200 openings against 500
// sources in all places.
func BenchmarkWholeSite(b *testing.B) {
	dice, walls := newDice(20), house()
	d := &design.Design{Walls: walls}
	for range 200 {
		place := on(walls[dice.IntN(4)], dice.within(0, 8), dice.within(0, 6))
		d.Openings = append(d.Openings, opening("o", round(place, 0.2)))
	}
	for len(d.Sources) < 500 {
		for _, thing := range dice.lot().things {
			if s, ok := thing.(*design.Source); ok {
				d.Sources = append(d.Sources, s)
			}
		}
		place := on(walls[dice.IntN(4)], dice.within(0, 8), dice.within(0, 6))
		d.Sources = append(d.Sources, source("s", round(place, 0.1)), source("s", sides(place, 0.5, 1)))
	}
	d.Sources = d.Sources[:500]
	for b.Loop() {
		s := New(d)
		for _, o := range d.Openings {
			for _, other := range d.Sources {
				if _, err := s.Distance(o, other); err != nil {
					b.Fatal(err)
				}
			}
		}
	}
}

// tower is a round house of many walls.
func tower(corners int, radius, top float64) []*design.Wall {
	list := make([][2]float64, corners)
	for i := range list {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(corners))
		list[i] = [2]float64{radius * cos, radius * sin}
	}
	return footprint(list, top)
}

func BenchmarkTaut(b *testing.B) {
	walls := rectangular(12, 8, 3)
	hood := opening("hood", round(on(walls[0], 10, 2), 0.2))
	type pair struct {
		name  string
		walls []*design.Wall
		a, b  any
	}
	cases := []pair{
		{"hood around a corner", walls, hood, opening("o", round(on(walls[1], 2, 1.5), 0.2))},
		{"window around a corner", walls, hood, window("w", sides(on(walls[1], 2, 1.5), 1, 1))},
		{"flue on the roof", walls, hood, source("s", round(roof(6, 3, 3), 0.3))},
		{"hood on the other side", walls, hood, opening("o", round(on(walls[2], 7, 1), 0.2))},
		{"lot line on the other side", walls, hood, lotLine("l", at(-50, 10), at(50, 10))},
		{"nothing in the way", walls, hood, source("s", ground(3, -3, 0))},
	}
	for _, corners := range []int{12, 50, 200} {
		walls := tower(corners, 5, 3)
		far := opening("o", round(on(walls[corners/2+corners/20], 0.07, 2), 0.1))
		cases = append(cases, pair{fmt.Sprintf("tower of %d walls", corners), walls, opening("o", round(on(walls[0], 0.07, 2), 0.1)), far})
	}
	for _, c := range cases {
		b.Run(c.name, func(b *testing.B) {
			s := New(&design.Design{Walls: c.walls})
			for b.Loop() {
				if _, err := s.TautMeasure(c.a, c.b); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkBuilding(b *testing.B) {
	for _, corners := range []int{4, 12, 50, 200} {
		d := &design.Design{Walls: tower(corners, 5, 3)}
		b.Run(fmt.Sprintf("%d walls", corners), func(b *testing.B) {
			for b.Loop() {
				newBuilding(d)
			}
		})
	}
}
