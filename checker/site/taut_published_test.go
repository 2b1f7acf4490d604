package site

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

// footprint is the walls of a closed plan, with a top for each, or one for all.
func footprint(corners [][2]float64, tops ...float64) []*design.Wall {
	walls := make([]*design.Wall, len(corners))
	for i, c := range corners {
		next := corners[(i+1)%len(corners)]
		walls[i] = wall(fmt.Sprintf("wall %d", i), at(c[0], c[1]), at(next[0], next[1]), 0)
		walls[i].Height = metres(tops[i%len(tops)])
	}
	return walls
}

// stringEnd is an end of a string in the reference values.
type stringEnd struct {
	Wall          *int
	FromLeft      float64 `json:"from_left"`
	Level         float64
	Width, Height float64
	Roof          bool
	At, From, To  *[2]float64
}

func (e stringEnd) thing(id string, walls []*design.Wall) any {
	switch {
	case e.From != nil:
		return lotLine(id, at(e.From[0], e.From[1]), at(e.To[0], e.To[1]))
	case e.Wall != nil:
		return window(id, sides(on(walls[*e.Wall], e.FromLeft, e.Level), e.Width, e.Height))
	case e.Roof:
		return source(id, roof(e.At[0], e.At[1], e.Level))
	}
	return source(id, ground(e.At[0], e.At[1], e.Level))
}

type stringCase struct {
	Corners [][2]float64
	Tops    []float64
	A, B    stringEnd
	String  float64
}

// measure gives the straight line and the string, both ways.
func (c stringCase) measure(t *testing.T, tops ...float64) (straight float64, there, back Measurement) {
	t.Helper()
	walls := footprint(c.Corners, tops...)
	a, b := c.A.thing("a", walls), c.B.thing("b", walls)
	s := New(&design.Design{Walls: walls})
	length, err := s.Distance(a, b)
	require.NoError(t, err)
	there, err = s.TautMeasure(a, b)
	require.NoError(t, err)
	back, err = s.TautMeasure(b, a)
	require.NoError(t, err)
	return float64(length), there, back
}

// Values made with shapely: see around.py beside them. A window or a lot line is
// sampled there, which can only be too long.
func TestStringsAroundFootprints(t *testing.T) {
	var data struct{ Cases []stringCase }
	read(t, "distances/around.json", &data)
	require.Len(t, data.Cases, 250)
	through := 0
	for i, c := range data.Cases {
		straight, there, back := c.measure(t, 1e4)
		spacing := 0.0
		if c.A.Width > 0 || c.B.Width > 0 {
			spacing = 1e-3
		}
		if c.B.From != nil {
			spacing = 1e-5
		}
		assert.LessOrEqual(t, float64(there.Length), c.String+1e-6, "case %d", i)
		assert.InDelta(t, c.String, float64(there.Length), 1e-6+spacing, "case %d", i)
		assert.InDelta(t, float64(there.Length), float64(back.Length), 1e-9, "case %d turned", i)
		assert.GreaterOrEqual(t, float64(there.Length), straight-1e-12, "case %d", i)
		if there.Through {
			through++
		} else {
			assert.InDelta(t, straight, float64(there.Length), 1e-12, "case %d stays outside", i)
		}
	}
	assert.Greater(t, through, 100)
}

// Values made with scipy: see over_roof.py beside them.
func TestStringsOverRoofEdges(t *testing.T) {
	var data struct{ Cases []stringCase }
	read(t, "distances/over_roof.json", &data)
	require.Len(t, data.Cases, 60)
	for i, c := range data.Cases {
		_, there, back := c.measure(t, c.Tops...)
		assert.True(t, there.Through, "case %d", i)
		assert.InDelta(t, c.String, float64(there.Length), 1e-6, "case %d", i)
		assert.InDelta(t, float64(there.Length), float64(back.Length), 1e-8, "case %d turned", i)
	}
}
