package rules_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/rules"
)

const leaving = `
[pack]
id = "county"
title = "A county (invented)"
units = "IP"
extends = ["irc-2021"]
default_base = "openings"
[[rule]]
id = "intake-high"
title = "Intake high above ground"
topic = "openings"
level = "error"
due = "permit"
each = { intake = "intakes" }
require = 'intake.above_grade >= 6 ft'
judge_when = 'intake.screened and intake.above_grade >= 3 ft'
says = "intake {intake.id} is {intake.above_grade} above ground"
remedy = "raise it"
basis = [{ document = "A county's code (invented)", read = "practice" }]
[[rule.sample]]
name = "on the limit"
expect = "pass"
edge = true
with = 'opening = [{ id = "fresh", above_grade = "6 ft" }]'
[[rule.sample]]
name = "lower, with a screen"
expect = "review"
edge = true
with = 'opening = [{ id = "fresh", above_grade = "3 ft" }]'
[[rule.sample]]
name = "just under the limit, with a screen"
expect = "review"
with = 'opening = [{ id = "fresh", above_grade = "5 ft 11.9 in" }]'
[[rule.sample]]
name = "lower than a person may allow"
expect = "fail"
with = 'opening = [{ id = "fresh", above_grade = "2 ft 11.9 in" }]'
[[rule.sample]]
name = "lower, and whether it has a screen is not given"
expect = "fail"
without = ["opening.fresh.screened"]
[[rule.sample]]
name = "lower, without a screen"
expect = "fail"
with = 'opening = [{ id = "fresh", screened = false }]'
[[rule.sample]]
name = "height not given"
expect = "open"
without = ["opening.fresh.above_grade"]
`

func leavingPack(t *testing.T, source string) (*rules.Effective, error) {
	t.Helper()
	return files(map[string]string{"county.rules.toml": source}).Pack("county.rules.toml")
}

// A failure is left to a person where judge_when holds, and stands where that is
// not known.
func TestJudgeWhen(t *testing.T) {
	pack, err := leavingPack(t, leaving)
	require.NoError(t, err)
	proves(t, pack, pack.Rule("intake-high"))
	for _, run := range pack.Prove(pack.Rule("intake-high")) {
		for _, j := range run.Judgements {
			if j.Outcome == rules.Review {
				assert.Equal(t, "the rule leaves this to a person's judgement", j.Reason)
				assert.Contains(t, []string{"intake fresh is 3 ft above ground", "intake fresh is 5 ft 11.9 in above ground"}, j.Message)
			}
		}
	}
}

// Changes of judge_when alone, such as another figure in it, are noticed.
func TestJudgeWhenIsProven(t *testing.T) {
	lax := replaced(t, leaving, "[[rule.sample]]\nname = \"lower than a person may allow\"\nexpect = \"fail\"\nwith = 'opening = [{ id = \"fresh\", above_grade = \"2 ft 11.9 in\" }]'\n", "")
	pack, err := leavingPack(t, lax)
	require.NoError(t, err)
	survivors := pack.ProveRule(pack.Rule("intake-high")).Survivors
	require.NotEmpty(t, survivors)
	for _, s := range survivors {
		assert.Equal(t, "judge_when", s.Part)
		assert.Equal(t, "county.rules.toml", s.File)
		assert.Positive(t, s.Position.Line)
	}
	without := replaced(t, leaving, "expect = \"review\"", "expect = \"fail\"")
	pack, err = leavingPack(t, without)
	require.NoError(t, err)
	assert.Equal(t, []string{"that a person must judge"}, pack.Rule("intake-high").Uncovered())
}

func TestJudgeWhenIsChecked(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{"'intake.screened and", "'intake.screned and", `rule "intake-high", judge_when: `},
		{"above_grade >= 3 ft'", "above_grade >= 3 cfm'", `rule "intake-high", judge_when: `},
		{"says = ", "judge = true\nsays = ", `rule "intake-high", judge_when: found beside judge = true, which leaves every failure to a person, expected one of them`},
	} {
		_, err := leavingPack(t, replaced(t, leaving, c.from, c.to))
		require.Error(t, err, c.to)
		assert.Contains(t, err.Error(), c.want)
		assert.Contains(t, err.Error(), "county.rules.toml:16:", c.to)
	}
}

// A local pack takes the leave away, or gives another.
func TestJudgeWhenIsChanged(t *testing.T) {
	pack := countyOf(t, `
[[change]]
rule = "intake-exhaust-distance"
reason = "the county measures straight, whatever stands in between"
judge_when = "false"
`)
	rule, parent := pack.Rule("intake-exhaust-distance"), builtIn(t, "irc-2021")
	assert.Equal(t, []string{"judge_when"}, rule.Reached)
	assert.Equal(t, "county", rule.Given["judge_when"])
	assert.False(t, rules.SameOutcomes(pack, rule, parent, parent.Rule("intake-exhaust-distance")))
	p := pack.ProveRule(rule)
	require.Len(t, p.Differing, 1)
	assert.Equal(t, rules.Fail, p.Differing[0].Got)
	assert.Equal(t, rules.Expected("review"), p.Differing[0].Sample.Expect)
}

func replaced(t *testing.T, text, from, to string) string {
	t.Helper()
	require.Contains(t, text, from)
	return strings.ReplaceAll(text, from, to)
}
