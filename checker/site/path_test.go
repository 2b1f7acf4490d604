package site

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/ventlint/ventlint/checker/design"
)

// A path keeps the points at which it bends, once each.
func TestPathsKeepTheirBendsOnly(t *testing.T) {
	a, b, c := vec{0, 0, 0}, vec{4, 0, 0}, vec{4, 3, 0}
	for name, path := range map[string][]vec{
		"as it is":       {a, b, c},
		"repeated":       {a, a, b, b, b, c, c},
		"straight on":    {a, {1, 0, 0}, {3, 0, 0}, b, {4, 1, 0}, {4, 2, 0}, c},
		"both":           {a, {1, 0, 0}, {1, 0, 0}, b, b, {4, 2, 0}, c},
		"within a noise": {a, {2, 1e-10, 0}, b, {4, 1e-10, 0}, c},
	} {
		got := bent(path)
		if assert.Len(t, got, 3, name) {
			for i, p := range []vec{a, b, c} {
				assert.InDeltaSlice(t, p[:], got[i][:], 1e-9, name)
			}
		}
	}
}

// The chord of a circle, by the triangle of 3, 4 and 5.
func TestTheChordOfADisc(t *testing.T) {
	for name, c := range map[string]struct {
		wall     segment
		from, to vec
	}{
		"whole chord":  {segment{vec{-10, 2, 0}, vec{10, 2, 0}}, vec{-1, 2, 0}, vec{7, 2, 0}},
		"other way":    {segment{vec{10, 2, 0}, vec{-10, 2, 0}}, vec{7, 2, 0}, vec{-1, 2, 0}},
		"cut at start": {segment{vec{1, 2, 0}, vec{13, 2, 0}}, vec{1, 2, 0}, vec{7, 2, 0}},
		"cut at end":   {segment{vec{-10, 2, 0}, vec{2, 2, 0}}, vec{-1, 2, 0}, vec{2, 2, 0}},
	} {
		got := c.wall.chord(disc{vec{3, 5, 0}, up, 5})
		assert.InDeltaSlice(t, c.from[:], got.a[:], 1e-12, name)
		assert.InDeltaSlice(t, c.to[:], got.b[:], 1e-12, name)
	}
}

// Before its first station a string has the height of that, beyond its last the
// height of the last, and in between it runs straight from bend to bend.
func TestHeightsOfAString(t *testing.T) {
	var two, four profile
	two.add(0, 1)
	two.add(10, 6)
	for along, want := range map[float64]float64{0: 1, 4: 3, 10: 6, 10.1: 6} {
		assert.InDelta(t, want, two.heightAt(along), 1e-12, along)
	}
	for _, s := range [][2]float64{{0, 0}, {2, 4}, {3, 1}, {5, 0}} {
		four.add(s[0], s[1])
	}
	for along, want := range map[float64]float64{1: 2, 2: 4, 6: 2, 10: 0, 10.1: 0} {
		assert.InDelta(t, want, four.heightAt(along), 1e-12, along)
	}
}

// A string that begins on the edge of a roof needs no way up to it.
func TestAStringFromTheTopOfAWall(t *testing.T) {
	walls := rectangular(12, 8, 3)
	m := taut(t, walls, source("a", on(walls[0], 6, 3)), source("b", on(walls[2], 6, 2)))
	assert.InDelta(t, 8+1, float64(m.Length), 1e-6)
}

// The farthest places of a site are inside it.
func TestTheFarthestPlaces(t *testing.T) {
	near, far := source("a", ground(0, 0, 0)), source("b", ground(farthest, 0, 0))
	assert.InDelta(t, farthest, distance(t, near, far), 1e-6)
	_, err := New(&design.Design{}).Distance(near, source("c", ground(1.001*farthest, 0, 0)))
	assert.ErrorContains(t, err, "expected at most 1e+07 m")
}
