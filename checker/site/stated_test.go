package site

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestAStatedDistanceStandsInForGeometry(t *testing.T) {
	south := house()[0]
	a, b := opening("a", round(on(south, 2, 1), 0.2)), opening("b", round(on(south, 5.2, 1), 0.2))
	drawing := stated("b", "a")
	drawing.Distance, drawing.Horizontal = metres(2.5), metres(2)
	s := New(&design.Design{Openings: []*design.Opening{a, b}, StatedDistances: []*design.StatedDistance{drawing}})

	m, err := s.Measure(a, b)
	require.NoError(t, err)
	assert.Equal(t, q.Length(2.5), m.Length)
	assert.Same(t, drawing, m.Stated)
	assert.True(t, m.Placed, "geometry still tells where it runs")
	m, err = s.MeasurePlan(b, a)
	require.NoError(t, err)
	assert.Equal(t, q.Length(2), m.Length)
	assert.Same(t, drawing, m.Stated)
	assert.Nil(t, s.StatedRise(a, b), "the drawing gives none")
}

func TestAStatedDistanceNeedsNoPlace(t *testing.T) {
	a, b := opening("a", design.Placement{}), source("b", design.Placement{})
	drawing := stated("a", "b")
	drawing.Distance = metres(4)
	s := New(&design.Design{StatedDistances: []*design.StatedDistance{drawing}})
	m, err := s.Measure(a, b)
	require.NoError(t, err)
	assert.Equal(t, Measurement{Length: 4, Stated: drawing}, m)
	_, err = s.Horizontal(a, b)
	assert.Contains(t, keys(t, err), `from_left of intake "a"`, "the drawing does not give it")
}

func TestSeveralDrawingsOfOnePair(t *testing.T) {
	a, b := opening("a", design.Placement{}), lotLine("b", nil, nil)
	plan, section := stated("a", "b"), stated("b", "a")
	plan.Horizontal, section.Distance = metres(3), metres(4)
	s := New(&design.Design{StatedDistances: []*design.StatedDistance{plan, section, {Between: []string{"a"}}}})
	m, err := s.Measure(a, b)
	require.NoError(t, err)
	assert.Same(t, section, m.Stated)
	assert.Same(t, section, s.StatedDistance(b, a))
	m, err = s.MeasurePlan(a, b)
	require.NoError(t, err)
	assert.Same(t, plan, m.Stated)
	assert.Same(t, plan, s.StatedHorizontal(a, b))
	assert.Nil(t, s.StatedDistance(a, a))
	assert.Nil(t, s.StatedDistance(a, design.Room{}), "it has no place")
}

func TestStatedRise(t *testing.T) {
	w := &design.Wall{}
	a := opening("a", design.Placement{Wall: &design.Link[design.Wall]{To: w}, Diameter: metres(0.2)})
	b := opening("b", design.Placement{Wall: &design.Link[design.Wall]{To: w}, Width: metres(1), Height: metres(0.5)})
	drawing := stated("a", "b")
	drawing.Rise = metres(1)
	s := New(&design.Design{StatedDistances: []*design.StatedDistance{drawing}})

	assert.Same(t, drawing, s.StatedRise(a, b))
	assert.Same(t, drawing, s.StatedRise(b, a))
	assert.Nil(t, s.StatedRise(a, a))
	got, err := s.Rise(a, b)
	require.NoError(t, err)
	assert.Equal(t, q.Length(1), got)
	got, err = s.Rise(b, a)
	require.NoError(t, err)
	assert.InDelta(t, -1.7, float64(got), 1e-12, "down 0.5 m, 1 m and 0.2 m")

	back := stated("b", "a")
	back.Rise = metres(-1.6)
	s = New(&design.Design{StatedDistances: []*design.StatedDistance{drawing, back}})
	got, err = s.Rise(b, a)
	require.NoError(t, err)
	assert.Equal(t, q.Length(-1.6), got, "as the drawing gives it")
	assert.Same(t, drawing, s.StatedRise(a, b))
	assert.Same(t, back, s.StatedRise(b, a))
}

func TestStatedRiseTheOtherWayNeedsBothHeights(t *testing.T) {
	drawing := stated("a", "b")
	drawing.Rise = metres(1)
	s := New(&design.Design{StatedDistances: []*design.StatedDistance{drawing}})
	a := opening("a", design.Placement{})
	b := window("b", design.Placement{Width: metres(1)})
	_, err := s.Rise(b, a)
	assert.Equal(t, []string{`height of window "b"`, `diameter of intake "a"`}, keys(t, err))

	flue := source("b", roof(1, 1, 7))
	_, err = s.Rise(flue, a)
	assert.Equal(t, []string{`diameter of intake "a"`}, keys(t, err), "what lies level has no height")
	a.Diameter = metres(0.2)
	got, err := s.Rise(flue, a)
	require.NoError(t, err)
	assert.InDelta(t, -1.2, float64(got), 1e-12)

	_, err = s.Rise(lotLine("b", nil, nil), a)
	assert.ErrorIs(t, err, errNoHeight)
}

// Turning a rise twice gives it back, and agrees with geometry.
func TestStatedRiseAgreesWithGeometry(t *testing.T) {
	south := house()[0]
	a, b := opening("a", round(on(south, 2, 1), 0.2)), opening("b", sides(on(south, 5, 4), 1, 0.5))
	drawing := stated("a", "b")
	drawing.Rise = metres(climb(t, a, b))
	s := New(&design.Design{StatedDistances: []*design.StatedDistance{drawing}})
	got, err := s.Rise(b, a)
	require.NoError(t, err)
	assert.InDelta(t, climb(t, b, a), float64(got), 1e-12)
}
