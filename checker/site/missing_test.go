package site

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// keys names what an error says is missing, as "key of thing".
func keys(t *testing.T, err error) []string {
	t.Helper()
	var all document.MissingAll
	switch e := err.(type) {
	case *document.Missing:
		all = document.MissingAll{*e}
	case document.MissingAll:
		all = e
	default:
		require.Fail(t, "nothing is missing", "%v", err)
	}
	var names []string
	for _, m := range all {
		names = append(names, m.Key+" of "+m.Thing)
	}
	return names
}

func bareWall(id string) *design.Wall {
	w := &design.Wall{}
	w.ID = id
	return w
}

func TestAllMissingInputsAreNamedAtOnce(t *testing.T) {
	south, east := bareWall("south"), bareWall("east")
	a := opening("a", design.Placement{Wall: &design.Link[design.Wall]{To: south}})
	b := window("b", design.Placement{Wall: &design.Link[design.Wall]{To: east}, Width: metres(1)})
	s := New(&design.Design{Openings: []*design.Opening{a}, BuildingOpenings: []*design.BuildingOpening{b}})

	_, err := s.Distance(a, b)
	assert.Equal(t, []string{
		`from of wall "south"`, `to of wall "south"`, `grade of wall "south"`,
		`from_left of intake "a"`, `above_grade of intake "a"`, `diameter of intake "a"`,
		`from of wall "east"`, `to of wall "east"`, `grade of wall "east"`,
		`from_left of window "b"`, `above_grade of window "b"`, `height of window "b"`,
	}, keys(t, err))

	_, err = s.Horizontal(a, b)
	assert.Equal(t, []string{
		`from of wall "south"`, `to of wall "south"`, `from_left of intake "a"`, `diameter of intake "a"`,
		`from of wall "east"`, `to of wall "east"`, `from_left of window "b"`,
	}, keys(t, err), "no height counts on the plan")

	_, err = s.Rise(a, b)
	assert.Equal(t, []string{
		`grade of wall "south"`, `above_grade of intake "a"`, `diameter of intake "a"`,
		`grade of wall "east"`, `above_grade of window "b"`, `height of window "b"`,
	}, keys(t, err), "no place along a wall counts in height")

	_, err = s.Height(a)
	assert.Equal(t, []string{`above_grade of intake "a"`, `diameter of intake "a"`}, keys(t, err))
}

func TestOneWallNeedsNothingOfItself(t *testing.T) {
	south := bareWall("south")
	a := opening("a", round(on(south, 2, 1), 0.2))
	b := opening("b", round(on(south, 5.2, 1), 0.2))
	assert.InDelta(t, 3, distance(t, a, b), 1e-12)
	assert.InDelta(t, 3, horizontal(t, a, b), 1e-12)
	assert.InDelta(t, -0.2, climb(t, a, b), 1e-12)
	m, err := New(&design.Design{}).Measure(a, b)
	require.NoError(t, err)
	assert.False(t, m.Placed, "where on the site is not known")

	b.FromLeft = nil
	_, err = New(&design.Design{}).Distance(a, b)
	assert.Equal(t, []string{`from_left of intake "b"`}, keys(t, err), "the wall is not asked for")
}

func TestMissingPlaces(t *testing.T) {
	fine := source("fine", on(house()[0], 1, 1))
	cases := []struct {
		name  string
		thing any
		want  []string
	}{
		{"an opening that says nothing", opening("x", design.Placement{}),
			[]string{`wall of intake "x"`, `from_left of intake "x"`, `above_grade of intake "x"`, `diameter of intake "x"`}},
		{"an opening on an unknown wall", opening("x", design.Placement{Wall: &design.Link[design.Wall]{ID: "w"}, FromLeft: metres(1), AboveGrade: metres(1), Diameter: metres(1)}),
			[]string{`wall of intake "x"`}},
		{"a source that says nothing", source("x", design.Placement{}),
			[]string{`level of source "x" (dryer)`, `at of source "x" (dryer)`}},
		{"a source with a height alone", source("x", design.Placement{AboveGrade: metres(1)}),
			[]string{`wall of source "x" (dryer)`, `from_left of source "x" (dryer)`}},
		{"an opening on the roof", opening("x", design.Placement{Roof: new(true)}),
			[]string{`level of intake "x"`, `at of intake "x"`, `diameter of intake "x"`}},
		{"a source on the ground", source("x", design.Placement{At: at(1, 1)}),
			[]string{`level of source "x" (dryer)`}},
		{"a source without a size", &design.Source{Thing: design.Thing{ID: "x"}, Kind: "dryer", Placement: ground(1, 1, 0)},
			[]string{`diameter of source "x" (dryer)`}},
		{"a source that is not said to be a point", &design.Source{Thing: design.Thing{ID: "x"}, Kind: "dryer", Point: new(false), Placement: on(house()[0], 1, 1)},
			[]string{`diameter of source "x" (dryer)`}},
		{"half a size of a source", source("x", design.Placement{At: at(1, 1), Level: metres(0), Height: metres(1)}),
			[]string{`width of source "x" (dryer)`}},
		{"a line", lotLine("x", nil, nil),
			[]string{`from of line "x" (lot-line)`, `to of line "x" (lot-line)`}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := New(&design.Design{}).Distance(fine, c.thing)
			assert.Equal(t, c.want, keys(t, err))
			m, err := New(&design.Design{}).Measure(c.thing, c.thing)
			require.Error(t, err)
			assert.Equal(t, Measurement{}, m)
			assert.Equal(t, c.want, keys(t, err), "nothing is named twice")
		})
	}
}

// Taking an input away never changes a distance: it is the same, or unknown.
func TestWithoutAnInputADistanceIsUnknownOrTheSame(t *testing.T) {
	build := func(drop int) (a *design.Opening, b *design.BuildingOpening) {
		walls := house()
		a = opening("a", round(on(walls[0], 2, 1), 0.2))
		b = window("b", sides(on(walls[1], 5, 2), 1, 1.5))
		inputs := []**q.Length{&a.FromLeft, &a.AboveGrade, &a.Diameter, &b.FromLeft, &b.AboveGrade, &b.Width, &b.Height, &walls[0].Grade, &walls[1].Grade}
		points := []**design.Point{&walls[0].From, &walls[0].To, &walls[1].From, &walls[1].To}
		if drop >= 0 && drop < len(inputs) {
			*inputs[drop] = nil
		}
		if i := drop - len(inputs); i >= 0 {
			*points[i] = nil
		}
		return a, b
	}
	a, b := build(-1)
	want := []float64{distance(t, a, b), horizontal(t, a, b), climb(t, a, b)}
	for drop := range 13 {
		a, b := build(drop)
		s := New(&design.Design{})
		unknown := 0
		for i, measure := range []func(a, b any) (q.Length, error){s.Distance, s.Horizontal, s.Rise} {
			got, err := measure(a, b)
			if err != nil {
				assert.Len(t, keys(t, err), 1)
				unknown++
				continue
			}
			assert.InDelta(t, want[i], float64(got), 1e-12)
		}
		assert.NotZero(t, unknown, "input %d counts for something", drop)
	}
}
