package checker_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design/designtest"
	"github.com/ventlint/ventlint/rules"
)

// atCorner is an invented house with an intake and an exhaust on both sides of a
// corner: 4 ft and 7 ft from it, 2 ft apart in height.
var atCorner = `
format = 1
[project]
name = "House at a corner (invented)"
stage = "permit"
units = "IP"
[dwelling]
` + designtest.FourWalls("30 ft", "20 ft", "18 ft") + `[[opening]]
id = "fresh"
kind = "intake"
wall = "south"
from_left = "25 ft 8 in"
above_grade = "4 ft"
width = "8 in"
height = "6 in"
[[opening]]
id = "stale"
kind = "exhaust"
air_from = "living-space"
wall = "east"
from_left = "7 ft 4 in"
above_grade = "6 ft 6 in"
width = "8 in"
height = "6 in"
`

// between finds the result of a rule for the intake and the exhaust.
func between(t *testing.T, source, rule string) checker.Result {
	t.Helper()
	for _, result := range reviewed(t, source, "irc-2021").Results {
		if result.Rule.ID == rule {
			return result
		}
	}
	require.Fail(t, "no result", rule)
	return checker.Result{}
}

const alongOutside = "the straight line runs through the building; along the outside it is "

// BV-07: 8.31 ft straight, 11.18 ft along the outside.
func TestALineThroughTheBuildingIsTold(t *testing.T) {
	result := between(t, atCorner, "intake-exhaust-distance")
	assert.Equal(t, rules.Review, result.Outcome)
	assert.Contains(t, result.Message, "8 ft 3.68 in")
	require.Len(t, result.Reasons, 2)
	assert.Equal(t, "the rule leaves this to a person's judgement", result.Reasons[0])
	assert.Regexp(t, "^"+alongOutside+"11 ft 2\\.", result.Reasons[1])
}

func TestALineThroughTheBuildingThatIsTooShortAllTheSame(t *testing.T) {
	near := strings.Replace(atCorner, `from_left = "7 ft 4 in"`, `from_left = "4 ft"`, 1)
	result := between(t, near, "intake-exhaust-distance")
	assert.Equal(t, rules.Fail, result.Outcome)
	require.Len(t, result.Reasons, 1)
	assert.True(t, strings.HasPrefix(result.Reasons[0], alongOutside), result.Reasons[0])
}

func TestNothingIsToldOfLinesOutside(t *testing.T) {
	beside := strings.Replace(atCorner, "wall = \"east\"\nfrom_left = \"7 ft 4 in\"", "wall = \"south\"\nfrom_left = \"20 ft\"", 1)
	result := between(t, beside, "intake-exhaust-distance")
	assert.Equal(t, rules.Fail, result.Outcome)
	assert.Empty(t, result.Reasons)
	apart := strings.Replace(atCorner, `from_left = "7 ft 4 in"`, `from_left = "15 ft"`, 1)
	result = between(t, apart, "intake-exhaust-distance")
	assert.Equal(t, rules.Pass, result.Outcome)
	assert.Empty(t, result.Reasons)
	unknown := strings.Replace(atCorner, "grade = \"0 ft\"\nheight = \"18 ft\"\n[[opening]]", "[[opening]]", 1)
	result = between(t, unknown, "intake-exhaust-distance")
	assert.Equal(t, rules.Fail, result.Outcome, "what is not known is no release")
	assert.Empty(t, result.Reasons)
}

// Only the drawing that was used is told, and once.
func TestDrawingsThatWereUsed(t *testing.T) {
	drawings := `
[[stated_distance]]
between = ["fresh", "stale"]
horizontal = "8 ft"
drawing = "plan"
[[stated_distance]]
between = ["stale", "fresh"]
distance = "9 ft"
drawing = "section"
`
	stated := "the distance between stale and fresh is stated, not computed: section"
	result := between(t, atCorner+drawings, "intake-exhaust-distance")
	assert.Equal(t, rules.Fail, result.Outcome, "a drawing's dimension is no line through the building")
	assert.Equal(t, []string{stated}, result.Stated)
	assert.Empty(t, result.Reasons)

	both := strings.Replace(drawings, `distance = "9 ft"`, "distance = \"9 ft\"\nrise = \"-2 ft\"", 1)
	assert.Equal(t, []string{stated}, between(t, atCorner+both, "intake-exhaust-distance").Stated)

	plan := strings.Replace(drawings, `distance = "9 ft"`, `rise = "-2 ft"`, 1)
	assert.Equal(t, []string{stated}, between(t, atCorner+plan, "intake-exhaust-distance").Stated, "for the rise")

	neither := strings.Split(drawings, "[[stated_distance]]")[1]
	assert.Empty(t, between(t, atCorner+"[[stated_distance]]"+neither, "intake-exhaust-distance").Stated)
}
