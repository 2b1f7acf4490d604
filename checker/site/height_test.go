package site

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
)

func TestRise(t *testing.T) {
	walls := house()
	low := opening("low", round(on(walls[0], 2, 1), 0.2))
	high := opening("high", sides(on(walls[0], 9, 3), 0.4, 0.6))
	assert.InDelta(t, 1.6, climb(t, low, high), 1e-12, "from 1.1 m to 2.7 m")
	assert.InDelta(t, -2.4, climb(t, high, low), 1e-12, "from 3.3 m down to 0.9 m")
	assert.InDelta(t, -0.2, climb(t, low, low), 1e-12, "one height below itself")
	north := opening("north", round(on(walls[2], 2, 1), 0.2))
	assert.InDelta(t, 0.8, climb(t, low, north), 1e-12, "the north grade is 1 m up")
	flue := source("flue", round(roof(1, 1, 7), 0.3))
	assert.InDelta(t, 5.9, climb(t, low, flue), 1e-12, "what lies level has no height of its own")
	assert.InDelta(t, -6.1, climb(t, flue, low), 1e-12)
}

func TestRiseNeedsNoPlace(t *testing.T) {
	w := &design.Wall{}
	low := source("low", design.Placement{Wall: &design.Link[design.Wall]{To: w}, AboveGrade: metres(1)})
	high := opening("high", design.Placement{Wall: &design.Link[design.Wall]{To: w}, AboveGrade: metres(4), Height: metres(2)})
	assert.InDelta(t, 2, climb(t, low, high), 1e-12, "one wall: neither its grade nor any from_left counts")
}

func TestHeightOnAWall(t *testing.T) {
	s := New(&design.Design{})
	height := func(a any) float64 {
		got, err := s.Height(a)
		require.NoError(t, err)
		return float64(got)
	}
	assert.InDelta(t, 0.9, height(opening("a", round(on(house()[2], 2, 1), 0.2))), 1e-12)
	assert.InDelta(t, 0.7, height(window("w", sides(on(house()[2], 2, 1), 3, 0.6))), 1e-12)
	assert.InDelta(t, 1, height(source("s", on(house()[2], 2, 1))), 1e-12)
	unplaced := design.Placement{AboveGrade: metres(1), Diameter: metres(0.2)}
	assert.InDelta(t, 0.9, height(opening("a", unplaced)), 1e-12, "the wall does not count")
}

func TestHeightOnTheRoof(t *testing.T) {
	d := &design.Design{Walls: house()}
	flue := source("flue", roof(3, 3, 7))
	got, err := New(d).Height(flue)
	require.NoError(t, err)
	assert.InDelta(t, 6, float64(got), 1e-12, "over the highest grade, 1 m")

	d.Walls[1].Grade = nil
	_, err = New(d).Height(flue)
	assert.EqualError(t, err, `needs grade of wall "east"`)
	_, err = New(&design.Design{}).Height(flue)
	assert.EqualError(t, err, "needs wall of design")
	flue.AboveGrade = metres(6.5)
	got, err = New(d).Height(flue)
	require.NoError(t, err)
	assert.InDelta(t, 6.5, float64(got), 1e-12, "as it says itself")
}

func TestHeightOnTheGround(t *testing.T) {
	stack := opening("stack", round(ground(20, 20, 1.2), 0.2))
	_, err := New(&design.Design{Walls: house()}).Height(stack)
	var missing *document.Missing
	require.ErrorAs(t, err, &missing, "the ground out there is not known")
	assert.Equal(t, "above_grade", missing.Key)
	stack.AboveGrade = metres(0.7)
	got, err := New(&design.Design{}).Height(stack)
	require.NoError(t, err)
	assert.InDelta(t, 0.7, float64(got), 1e-12)
}
