package site

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

func metres(x float64) *q.Length { return new(q.Length(x)) }

func at(x, y float64) *design.Point { return &design.Point{X: q.Length(x), Y: q.Length(y)} }

func wall(id string, from, to *design.Point, grade float64) *design.Wall {
	w := &design.Wall{From: from, To: to, Grade: metres(grade)}
	w.ID = id
	return w
}

// house is a rectangular footprint of 12 m by 8 m: south, east, north, west.
func house() []*design.Wall {
	return []*design.Wall{
		wall("south", at(0, 0), at(12, 0), 0),
		wall("east", at(12, 0), at(12, 8), 0.5),
		wall("north", at(12, 8), at(0, 8), 1),
		wall("west", at(0, 8), at(0, 0), 0.5),
	}
}

func on(w *design.Wall, fromLeft, aboveGrade float64) design.Placement {
	return design.Placement{
		Wall:     &design.Link[design.Wall]{ID: w.ID, To: w},
		FromLeft: metres(fromLeft), AboveGrade: metres(aboveGrade),
	}
}

func ground(x, y, level float64) design.Placement {
	return design.Placement{At: at(x, y), Level: metres(level)}
}

func roof(x, y, level float64) design.Placement {
	p := ground(x, y, level)
	p.Roof = new(true)
	return p
}

func round(p design.Placement, diameter float64) design.Placement {
	p.Diameter = metres(diameter)
	return p
}

func sides(p design.Placement, width, height float64) design.Placement {
	p.Width, p.Height = metres(width), metres(height)
	return p
}

func opening(id string, p design.Placement) *design.Opening {
	o := &design.Opening{Placement: p, Kind: "intake"}
	o.ID = id
	return o
}

func window(id string, p design.Placement) *design.BuildingOpening {
	o := &design.BuildingOpening{Placement: p, Kind: "window"}
	o.ID = id
	return o
}

// source is a point unless it has a size.
func source(id string, p design.Placement) *design.Source {
	s := &design.Source{Placement: p, Kind: "dryer"}
	if p.Diameter == nil && p.Width == nil && p.Height == nil && p.Along == nil && p.Outline == nil {
		s.Point = new(true)
	}
	s.ID = id
	return s
}

func lotLine(id string, from, to *design.Point) *design.Line {
	l := &design.Line{Kind: "lot-line", From: from, To: to}
	l.ID = id
	return l
}

func stated(first, second string) *design.StatedDistance {
	return &design.StatedDistance{Between: []string{first, second}}
}

func distance(t *testing.T, a, b any) float64 {
	t.Helper()
	got, err := New(&design.Design{}).Distance(a, b)
	require.NoError(t, err)
	return float64(got)
}

func horizontal(t *testing.T, a, b any) float64 {
	t.Helper()
	got, err := New(&design.Design{}).Horizontal(a, b)
	require.NoError(t, err)
	return float64(got)
}

func climb(t *testing.T, lower, upper any) float64 {
	t.Helper()
	got, err := New(&design.Design{}).Rise(lower, upper)
	require.NoError(t, err)
	return float64(got)
}
