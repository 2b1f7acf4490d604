package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/rules"
)

// A pack may list what no sample of an inherited rule can notice; what it lists in
// vain is told.
func TestEquivalentsOfAChange(t *testing.T) {
	excuse := func(change string) string {
		return "\n[[change]]\nrule = \"other-exhaust-off-intake\"\nreason = \"ordinance 7\"\n" +
			"[[change.equivalent]]\nchange = '''" + change + "'''\nreason = \"invented\"\n"
	}
	proof := func(tables string) rules.Proof {
		pack := countyOf(t, twelveFeet+tables)
		return pack.ProveRule(pack.Rule("other-exhaust-off-intake"))
	}
	first := proof(excuse("no such change"))
	require.Len(t, first.Unneeded, 1)
	require.NotEmpty(t, first.Survivors)
	listed := proof(excuse(first.Survivors[0].Change))
	assert.Empty(t, listed.Unneeded)
	assert.Equal(t, 1, listed.Excused)
	assert.Len(t, listed.Survivors, len(first.Survivors)-1)
}

// A rule that waits for a local pack to set its limit is shown by a sample that a
// person must judge: it can neither pass nor fail.
func TestRuleThatWaitsForALimit(t *testing.T) {
	pack := countyOf(t, `
[limits.depth_by_the_shore]
title = "Depth that a township sets"
basis = [{ document = "County Code (invented)", read = "seen" }]

[[rule]]
id = "depth-by-the-shore"
title = "Intakes above the tide"
topic = "openings"
level = "error"
due = "permit"
each = { intake = "intakes" }
require = "intake.above_grade >= limit.depth_by_the_shore"
says = "intake {intake.id} is low"
remedy = "ask the township"
basis = [{ document = "County Code (invented)", read = "seen" }]

[[rule.sample]]
name = "whatever its height"
expect = "review"

[[rule.sample]]
name = "height not given"
expect = "open"
without = ["opening.fresh.above_grade"]
`)
	p := pack.ProveRule(pack.Rule("depth-by-the-shore"))
	assert.Zero(t, p.Wrong())
	assert.Empty(t, p.Gaps)
	assert.Empty(t, p.Survivors)
}
