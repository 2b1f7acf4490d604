package checker_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

const variance = `
[[variance]]
rule = "working-space"
reason = "existing closet, replacement unit of the same size"
by = "building official"
`

// accepted reviews the faulty house with a variance and gives the result of the
// working space.
func accepted(t *testing.T, more string) (*checker.Report, checker.Result) {
	t.Helper()
	r := reviewed(t, shipped(t, "faults/alder-court-faults.vent.toml")+variance+more, "irc-2021")
	for _, result := range r.Results {
		if result.Rule.ID == "working-space" {
			return r, result
		}
	}
	require.Fail(t, "the rule did not run")
	return nil, checker.Result{}
}

func TestVarianceAccepts(t *testing.T) {
	for _, more := range []string{"", "subject = \"hrv\"\n", "until = \"2026-03-31\"\n", "until = \"2030-01-01\"\n"} {
		r, result := accepted(t, more)
		assert.Equal(t, rules.Fail, result.Outcome, more)
		assert.NotNil(t, result.Variance, more)
		assert.False(t, result.Blocks(rules.Error), more)
		assert.Equal(t, 1, r.Count().Accepted, more)
		assert.Empty(t, r.Remarks, more)
	}
}

// A variance that has ended, cannot be read as a day, or meets nothing counts for
// nothing, and is told.
func TestVarianceThatCountsForNothing(t *testing.T) {
	for more, why := range map[string]string{
		"until = \"2026-03-30\"\n": "it ended on 2026-03-30",
		"until = \"31.12.2026\"\n": `"31.12.2026" is not a day such as 2026-03-31`,
		"subject = \"furnace\"\n":  "the rule finds nothing that it would accept",
	} {
		r, result := accepted(t, more)
		assert.Nil(t, result.Variance, more)
		assert.True(t, result.Blocks(rules.Error), more)
		require.Len(t, r.Remarks, 1, more)
		assert.Contains(t, r.Remarks[0].Text, why)
		assert.Positive(t, r.Remarks[0].Position.Line)
	}
}

func TestVarianceFromNoRule(t *testing.T) {
	source := shipped(t, "ok/alder-court.vent.toml") + "\n[[variance]]\nrule = \"working-spice\"\nreason = \"none\"\nby = \"official\"\n"
	r := reviewed(t, source, "irc-2021")
	require.Len(t, r.Remarks, 1)
	assert.Contains(t, r.Remarks[0].Text, `did you mean "working-space"?`)
}

func TestIgnoreVariances(t *testing.T) {
	d := loaded(t, shipped(t, "faults/alder-court-faults.vent.toml")+variance)
	r := checker.Review(d, checker.Request{Packs: packs(t, "irc-2021"), Date: today, IgnoreVariances: true})
	assert.Zero(t, r.Count().Accepted)
}
