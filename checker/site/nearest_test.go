package site

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

const foot, inch = 0.3048, 0.0254

var (
	north = vec{0, 1, 0}
	east  = vec{1, 0, 0}
)

// onNorthWall is a disc in the plane y = 0.
func onNorthWall(x, z, radius float64) disc { return disc{vec{x, 0, z}, north, radius} }

func TestNearestByHand(t *testing.T) {
	square := region{[]vec{{0, 0, 0}, {4, 0, 0}, {4, 4, 0}, {0, 4, 0}}, up}
	hollow := region{[]vec{{0, 0, 0}, {6, 0, 0}, {6, 6, 0}, {4, 6, 0}, {4, 2, 0}, {2, 2, 0}, {2, 6, 0}, {0, 6, 0}}, up}
	pane := rectangle(vec{0, 0, 2}, vec{1, 0, 0}, vec{0, 0, 0.5}, north)
	cases := []struct {
		name string
		a, b piece
		want float64
	}{
		{"two points", point(vec{0, 0, 0}), point(vec{3, 4, 12}), 13},
		{"point beside a segment", point(vec{2, 3, 0}), segment{vec{0, 0, 0}, vec{5, 0, 0}}, 3},
		{"point past the end of a segment", point(vec{8, 4, 0}), segment{vec{0, 0, 0}, vec{5, 0, 0}}, 5},
		{"segments in one line", segment{vec{0, 0, 0}, vec{1, 0, 0}}, segment{vec{4, 0, 0}, vec{9, 0, 0}}, 3},
		{"segments that overlap in one line", segment{vec{0, 0, 0}, vec{5, 0, 0}}, segment{vec{4, 0, 0}, vec{9, 0, 0}}, 0},
		{"parallel segments", segment{vec{0, 0, 0}, vec{5, 0, 0}}, segment{vec{4, 7, 0}, vec{9, 7, 0}}, 7},
		{"segments that cross", segment{vec{-1, 0, 0}, vec{1, 0, 0}}, segment{vec{0, -1, 0}, vec{0, 1, 0}}, 0},
		{"segments that pass", segment{vec{-1, 0, 0}, vec{1, 0, 0}}, segment{vec{0, -1, 2}, vec{0, 1, 2}}, 2},
		{"point over a disc", point(vec{0.3, 0.4, 2}), disc{vec{}, up, 0.5}, 2},
		{"point in a disc", point(vec{0.1, 0, 0}), disc{vec{}, up, 0.5}, 0},
		{"point above and beside a disc", point(vec{4, 0, 4}), disc{vec{}, up, 1}, 5},
		{"segment through a disc", segment{vec{0.2, 0, -1}, vec{0.2, 0.3, 1}}, disc{vec{}, up, 0.5}, 0},
		{"segment through the middle of a disc", segment{vec{0, 0, -1}, vec{0, 0, 2}}, disc{vec{}, up, 0.5}, 0},
		{"segment upright beside a disc", segment{vec{3, 0, -1}, vec{3, 0, 1}}, disc{vec{}, up, 1}, 2},
		{"level segment over a disc", segment{vec{-9, 0.5, 3}, vec{9, 0.5, 3}}, disc{vec{}, up, 1}, 3},
		{"level segment above and beside a disc", segment{vec{-9, 5, 3}, vec{9, 5, 3}}, disc{vec{}, up, 1}, 5},
		{"hoods of 6 in at 10 ft 6 in", onNorthWall(0, 0, 3*inch), onNorthWall(10.5*foot, 0, 3*inch), 10 * foot},
		{"discs that touch", onNorthWall(0, 0, 1), onNorthWall(2, 0, 1), 0},
		{"discs that overlap", onNorthWall(0, 0, 1), onNorthWall(0.5, 0, 1), 0},
		{"disc in a disc", onNorthWall(0, 0, 1), onNorthWall(0.1, 0, 0.2), 0},
		{"disc before a disc", onNorthWall(0, 0, 1), disc{vec{0, 3, 0}, north, 1}, 3},
		{"disc before a part of a disc", onNorthWall(0, 0, 1), disc{vec{1.5, 3, 0}, north.times(-1), 1}, 3},
		{"disc before and beside a disc", onNorthWall(0, 0, 1), disc{vec{6, 3, 0}, north, 1}, 5},
		{"discs across a right outside corner", disc{vec{-4, 0, 0}, north, 1}, disc{vec{0, -5, 0}, east, 1}, 5},
		{"disc on a wall over a disc on the ground", onNorthWall(0, 5, 1), disc{vec{0, 0, 0}, up, 2}, 4},
		{"disc that cuts a disc", disc{vec{}, up, 1}, disc{vec{0.5, 0, 0}, east, 1}, 0},
		{"disc whose rim touches a disc", disc{vec{}, up, 1}, disc{vec{0, 0, 2}, east, 2}, 0},
		{"disc in a square", disc{vec{2, 2, 0}, up, 1}, square, 0},
		{"disc over a square", disc{vec{2, 2, 3}, up, 1}, square, 3},
		{"disc round a square", disc{vec{2, 2, 3}, up, 100}, square, 3},
		{"disc beside a square", disc{vec{9, 2, 0}, up, 1}, square, 4},
		{"disc off the corner of a square", disc{vec{7, 8, 0}, up, 1}, square, 4},
		{"upright disc over a square", onNorthWall(2, 4, 1), square, 3},
		{"upright disc through a square", disc{vec{2, 2, 0.5}, north, 1}, square, 0},
		{"disc in the hollow of an area", disc{vec{3, 5, 0}, up, 0.25}, hollow, 0.75},
		{"disc over the hollow of an area", disc{vec{3, 5, 1}, up, 0.25}, hollow, 1.25},
		{"point over the leg of an area", point(vec{1, 5, 2}), hollow, 2},
		{"panes on one wall", pane, rectangle(vec{5, 0, 2}, vec{1, 0, 0}, vec{0, 0, 0.5}, north), 3},
		{"panes one above the other", pane, rectangle(vec{0.5, 0, 5}, vec{1, 0, 0}, vec{0, 0, 0.5}, north), 2},
		{"panes off their corners", pane, rectangle(vec{5, 0, 7}, vec{1, 0, 0}, vec{0, 0, 0.5}, north), 5},
		{"panes that face each other", pane, rectangle(vec{0.5, 6, 2}, vec{1, 0, 0}, vec{0, 0, 0.5}, north), 6},
		{"pane within a pane", pane, rectangle(vec{0.1, 0, 2}, vec{0.2, 0, 0}, vec{0, 0, 0.1}, north), 0},
		{"hood beside a pane", pane, onNorthWall(4, 2.25, 0.5), 2.5},
		{"hood off the corner of a pane", pane, onNorthWall(4, 6.5, 0.5), 4.5},
		{"segment through a pane", segment{vec{0.5, -1, 2}, vec{0.5, 1, 2}}, pane, 0},
		{"area over an area", square, region{[]vec{{1, 1, 5}, {2, 1, 5}, {2, 2, 5}}, up}, 5},
		{"area in the hollow of an area", hollow, region{[]vec{{2.5, 5, 0}, {3.5, 5, 0}, {3, 6, 0}}, up}, 0.5},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			there, back := c.a.to(c.b), c.b.to(c.a)
			assert.InDelta(t, c.want, there.gap, 1e-12*max(1, c.want))
			assert.InDelta(t, c.want, back.gap, 1e-12*max(1, c.want))
			assert.InDelta(t, there.gap, there.to.minus(there.from).length(), 1e-9)
		})
	}
}

// Of discs that lie over each other, the two points lie in both.
func TestDiscsOverEachOther(t *testing.T) {
	large := onNorthWall(0, 0, 2)
	for _, x := range []float64{0.3, 1.2, 1.8, 2.5, 2.9} {
		small := disc{vec{x, 1, 0}, north, 1}
		prove(t, large, small, large.to(small))
		prove(t, small, large, small.to(large))
	}
}

// Straight distance around a right outside corner, from the geometry note of the
// published openings cases: sqrt(a^2 + b^2 + dz^2) for points at a and b from it.
func TestPointsAroundACorner(t *testing.T) {
	a, b, dz := 4*foot, 7*foot, 2*foot
	got := point(vec{-a, 0, 0}).to(point(vec{0, -b, dz}))
	assert.InDelta(t, math.Sqrt(a*a+b*b+dz*dz), got.gap, 1e-12)
}

func TestAlmostParallelSegments(t *testing.T) {
	for _, tilt := range []float64{1e-15, 1e-12, 1e-9, 1e-6, 1e-3} {
		a := segment{vec{-50, 0, 0}, vec{50, 0, 0}}
		b := segment{vec{-50, -50 * tilt, 0}, vec{50, 50 * tilt, 0}}
		assert.InDelta(t, 0, a.to(b).gap, 1e-12, "they cross in the middle at a slope of %g", tilt)
		over := segment{vec{-50, 1 + tilt, 0}, vec{50, 1, 0}}
		assert.InDelta(t, 1, a.to(over).gap, 1e-12, "they stay apart at a slope of %g", tilt)
	}
}

func TestAlmostParallelDiscs(t *testing.T) {
	for _, tilt := range []float64{1e-15, 1e-12, 1e-9, 1e-8, 1e-7, 1e-4} {
		sin, cos := math.Sincos(tilt)
		for _, normal := range []vec{{0, sin, cos}, {sin, 0, cos}, {0, sin, -cos}} {
			other := disc{vec{5, 0, 0.25}, normal, 1}
			got := disc{vec{}, up, 1}.to(other)
			assert.InDelta(t, math.Hypot(3, 0.25), got.gap, 1e-8+tilt, "tilt %g", tilt)
		}
	}
}
