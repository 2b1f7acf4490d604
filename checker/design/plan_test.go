package design

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestSegmentsThatMeet(t *testing.T) {
	for _, c := range []struct {
		name  string
		a, b  segment
		meets bool
	}{
		{"crossing", segment{spot{0, 0}, spot{4, 4}}, segment{spot{0, 4}, spot{4, 0}}, true},
		{"apart", segment{spot{0, 0}, spot{4, 0}}, segment{spot{0, 1}, spot{4, 1}}, false},
		{"would cross if longer", segment{spot{0, 0}, spot{1, 1}}, segment{spot{0, 4}, spot{4, 0}}, false},
		{"end on a side", segment{spot{0, 0}, spot{4, 0}}, segment{spot{2, 0}, spot{2, 3}}, true},
		{"end on an end", segment{spot{0, 0}, spot{4, 0}}, segment{spot{4, 0}, spot{5, 3}}, true},
		{"over each other", segment{spot{0, 0}, spot{4, 0}}, segment{spot{3, 0}, spot{9, 0}}, true},
		{"one within the other", segment{spot{0, 0}, spot{9, 0}}, segment{spot{3, 0}, spot{4, 0}}, true},
		{"in one line, apart", segment{spot{0, 0}, spot{4, 0}}, segment{spot{5, 0}, spot{9, 0}}, false},
		{"in one line, upright, apart", segment{spot{0, 0}, spot{0, 4}}, segment{spot{0, 5}, spot{0, 9}}, false},
	} {
		require.Equal(t, c.meets, c.a.meets(c.b), c.name)
		require.Equal(t, c.meets, c.b.meets(c.a), c.name)
		turned := func(s segment) segment { return segment{s.b, s.a} }
		require.Equal(t, c.meets, turned(c.a).meets(c.b), c.name)
	}
}

func TestSidesThatRunBack(t *testing.T) {
	require.True(t, segment{spot{0, 0}, spot{4, 0}}.foldsInto(segment{spot{4, 0}, spot{1, 0}}))
	require.False(t, segment{spot{0, 0}, spot{4, 0}}.foldsInto(segment{spot{4, 0}, spot{9, 0}}), "straight on")
	require.False(t, segment{spot{0, 0}, spot{4, 0}}.foldsInto(segment{spot{4, 0}, spot{1, 1}}), "a sharp corner")
}

func TestAreaOfARing(t *testing.T) {
	l := func(m float64) q.Length { return q.Length(m) }
	box := []Point{{l(1), l(1)}, {l(5), l(1)}, {l(5), l(4)}, {l(1), l(4)}}
	require.Equal(t, 12.0, ringOf(box).area())
	slices.Reverse(box)
	require.Equal(t, -12.0, ringOf(box).area())
}

func TestRingsThatFoldAtTheirFirstCorner(t *testing.T) {
	points := []Point{{0, 0}, {4, 0}, {4, 3}, {6, 3}, {6, 0}, {5, 0}}
	_, _, found := ringOf(points).crossing()
	require.True(t, found, "the last side runs over the first")
	fold := []Point{{2, 0}, {4, 0}, {4, 3}, {0, 0}} // the last side runs on into the first
	_, _, found = ringOf(fold).crossing()
	require.False(t, found)
	fold = []Point{{0, 0}, {4, 0}, {4, 3}, {4, 1}, {3, 0}}
	_, _, found = ringOf(fold).crossing()
	require.True(t, found)
}

// A star-shaped ring never crosses itself, wherever it lies and however it is
// turned; with two of its points swapped it does.
func TestRandomRings(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		n := 5 + random.IntN(20)
		center := spot{random.Float64()*200 - 100, random.Float64()*200 - 100}
		points := make([]Point, n)
		for i := range points {
			angle := (float64(i) + 0.8*random.Float64()) / float64(n) * 2 * math.Pi
			sin, cos := math.Sincos(angle)
			far := 5 + 20*random.Float64()
			points[i] = Point{q.Length(center.x + far*cos), q.Length(center.y + far*sin)}
		}
		r := ringOf(points)
		_, _, crossed := r.crossing()
		require.False(t, crossed, "%v", points)
		require.Positive(t, r.area())

		circle := ringOf(onCircle(n))
		_, _, crossed = circle.crossing()
		require.False(t, crossed)
		swapped := onCircle(n)
		i := random.IntN(n)
		swapped[i], swapped[(i+2)%n] = swapped[(i+2)%n], swapped[i]
		_, _, crossed = ringOf(swapped).crossing()
		require.True(t, crossed)
	}
}

func onCircle(n int) []Point {
	points := make([]Point, n)
	for i := range points {
		sin, cos := math.Sincos(float64(i) / float64(n) * 2 * math.Pi)
		points[i] = Point{q.Length(9 * cos), q.Length(9 * sin)}
	}
	return points
}
