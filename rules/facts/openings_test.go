package facts

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/design/designtest"
	"github.com/ventlint/ventlint/checker/document"
)

// corner is an invented house with a hood on each side of a corner, 6 ft from it to
// the edge.
var corner = `
format = 1
[project]
name = "corner"
stage = "permit"
units = "IP"
[dwelling]
` + designtest.FourWalls("30 ft", "20 ft", "18 ft") + `[[opening]]
id = "fresh"
kind = "intake"
wall = "south"
from_left = "23 ft 9 in"
above_grade = "6 ft"
diameter = "6 in"
[[opening]]
id = "stale"
kind = "exhaust"
wall = "east"
from_left = "6 ft 3 in"
above_grade = "6 ft"
diameter = "6 in"
[[source]]
id = "shed"
kind = "generator"
point = true
at = ["10 ft", "10 ft"]
level = "0 ft"
`

const foot = 0.3048

func siteOf(t *testing.T, source string) *Facts {
	t.Helper()
	d, problems := design.Load("corner", []byte(source))
	require.Empty(t, problems)
	return Of(d)
}

// lacking names what an error says is missing.
func lacking(t *testing.T, err error) string {
	t.Helper()
	var one *document.Missing
	require.ErrorAs(t, err, &one)
	return one.Ref.KeyName(one.Key)
}

func TestStringsOfRules(t *testing.T) {
	f := siteOf(t, corner)
	fresh, stale := f.Design.Openings[0], f.Design.Openings[1]
	length, err := f.taut(fresh, stale)
	require.NoError(t, err)
	assert.InDelta(t, 12*foot, float64(length), 1e-9)
	through, err := f.throughBuilding(fresh, stale)
	require.NoError(t, err)
	assert.True(t, through)
	through, err = f.throughBuilding(stale, stale)
	require.NoError(t, err)
	assert.False(t, through)
}

func TestWhatStringsOfRulesLack(t *testing.T) {
	for line, want := range map[string]string{
		`height = "18 ft"`:        "wall.south.height",
		`from_left = "6 ft 3 in"`: "opening.stale.from_left",
		`to = ["30 ft", "20 ft"]`: "wall.east.to",
	} {
		f := siteOf(t, strings.Replace(corner, line, "", 1))
		fresh, stale := f.Design.Openings[0], f.Design.Openings[1]
		_, err := f.taut(fresh, stale)
		assert.Equal(t, want, lacking(t, err))
		_, err = f.throughBuilding(fresh, stale)
		assert.Equal(t, want, lacking(t, err))
	}
	f := siteOf(t, corner)
	_, err := f.taut(f.Design.Openings[0], f.Design.Sources[0])
	judged(t, err, "no string leads from")
}

func TestAStatedDistanceIsNoLineThroughTheHouse(t *testing.T) {
	f := siteOf(t, corner+"[[stated_distance]]\nbetween = [\"fresh\", \"stale\"]\ndistance = \"9 ft\"\n")
	fresh, stale := f.Design.Openings[0], f.Design.Openings[1]
	length, err := f.taut(fresh, stale)
	require.NoError(t, err)
	assert.InDelta(t, 9*foot, float64(length), 1e-12)
	through, err := f.throughBuilding(fresh, stale)
	require.NoError(t, err)
	assert.False(t, through)
}

// A site with more strings than the program follows is for a person, and one that
// is known stays known.
func TestStringsOfAHostileSite(t *testing.T) {
	f := siteOf(t, corner)
	fresh, stale := f.Design.Openings[0], f.Design.Openings[1]
	known, err := f.taut(fresh, stale)
	require.NoError(t, err)
	assert.Equal(t, len(f.Design.Walls), f.led)
	f.led = mostLed
	_, err = f.taut(stale, fresh)
	judged(t, err, "a person must judge")
	again, err := f.taut(fresh, stale)
	require.NoError(t, err)
	assert.Equal(t, known, again)
	beside, err := f.taut(fresh, fresh)
	require.NoError(t, err, "nothing in the way")
	assert.Zero(t, beside)
}
