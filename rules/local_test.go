package rules_test

import (
	"fmt"
	"io/fs"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/rules"
)

const harborCounty = "testdata/packs/harbor-county.rules.toml"

// files makes a library of packs that stand in a test.
func files(packs map[string]string) *rules.Library {
	return rules.NewLibrary(func(name string) ([]byte, error) {
		if text, ok := packs[name]; ok {
			return []byte(text), nil
		}
		return nil, fs.ErrNotExist
	})
}

// countyOf is a local pack on irc-2021 with some tables more.
func countyOf(t *testing.T, tables string) *rules.Effective {
	t.Helper()
	pack, err := files(map[string]string{"county.rules.toml": `
[pack]
id = "county"
title = "A county (invented)"
units = "IP"
extends = ["irc-2021"]
default_base = "openings"
` + tables}).Pack("county.rules.toml")
	require.NoError(t, err)
	return pack
}

const twelveFeet = `
[limits.intake_to_exhaust]
value = "12 ft"
basis = [{ document = "Harbor County Code", read = "seen" }]
`

// The county's pack shows all that a local pack can do, and proves.
func TestHarborCountyProves(t *testing.T) {
	pack, err := fromRoot(t).Pack(harborCounty)
	require.NoError(t, err)
	reached := map[string][]string{}
	for _, rule := range pack.Rules {
		p := pack.ProveRule(rule)
		assert.Zero(t, p.Wrong(), rule.ID)
		assert.Empty(t, p.Gaps, rule.ID)
		assert.Empty(t, p.Survivors, rule.ID)
		assert.False(t, p.Unshown, rule.ID)
		if len(rule.Reached) > 0 {
			reached[rule.ID] = rule.Reached
			assert.NotEmpty(t, p.Differing, rule.ID)
		}
	}
	assert.Equal(t, map[string][]string{
		"intake-exhaust-distance":  {`limit "intake_to_exhaust"`},
		"other-exhaust-off-intake": {`limit "intake_to_exhaust"`},
		"smooth-duct-length":       {`table "smooth_duct_length"`},
		"shelter-of-the-unit":      {"require"},
	}, reached)
	assert.Nil(t, pack.Rule("combination-fitting-halves"))
	require.Len(t, pack.Off, 1)
	assert.Equal(t, "harbor-county", pack.Off[0].Pack)
	marking := pack.Rule("control-marking")
	assert.Equal(t, rules.Warning, marking.Level)
	assert.Equal(t, "mark the control as sheet H-3 of the county shows", marking.Remedy)
	assert.Equal(t, "irc-2021", marking.Pack)
	assert.Equal(t, "harbor-county", marking.Given["level"])
	assert.NotNil(t, pack.Rule("intake-above-spray"))
	assert.NotNil(t, pack.Rule("filter-service-by-the-shore"))
}

// A rule that no override reaches is proven as its parent proves it.
func TestUnreachedRulesAreProvenAsTheyAre(t *testing.T) {
	pack, parent := countyOf(t, twelveFeet), builtIn(t, "irc-2021")
	for _, id := range []string{"working-space", "kitchen-exhaust-flow"} {
		p := pack.ProveRule(pack.Rule(id))
		assert.True(t, p.Inherited)
		assert.Zero(t, p.Mutants)
		assert.Len(t, p.Runs, len(parent.Rule(id).Samples))
		assert.Zero(t, p.Wrong())
	}
}

// An override without samples of its own is a gap; the parent's samples tell what
// it alters.
func TestOverrideWithoutSamples(t *testing.T) {
	pack := countyOf(t, twelveFeet)
	rule := pack.Rule("intake-exhaust-distance")
	p := pack.ProveRule(rule)
	assert.True(t, p.Unshown)
	assert.False(t, p.Inherited)
	assert.Zero(t, p.Wrong())
	differing := map[string]rules.Outcome{}
	for _, run := range p.Differing {
		differing[run.Sample.Name] = run.Got
	}
	assert.Equal(t, rules.Fail, differing["on the limit"])
	assert.NotEmpty(t, p.Survivors, "nothing shows the new limit")
	assert.Len(t, p.Runs, len(builtIn(t, "irc-2021").Rule(rule.ID).Samples)-len(p.Differing))
}

// The samples of the pack close the gap, and a wrong one is a failure.
func TestSamplesOfOverriddenRules(t *testing.T) {
	sample := func(name, expect, place string) string {
		return fmt.Sprintf("\n[[sample]]\nrule = \"intake-exhaust-distance\"\nname = %q\nexpect = %q\nwith = 'opening = [{ id = \"stale\", from_left = %q }]'\n", name, expect, place)
	}
	right := twelveFeet + sample("on the limit", "pass", "20 ft 6 in") + sample("under it", "fail", "20 ft 5.9 in") +
		strings.Replace(sample("around a corner", "review", "25 ft 6 in"), "from_left", `wall = "east", from_left`, 1)
	pack := countyOf(t, right)
	p := pack.ProveRule(pack.Rule("intake-exhaust-distance"))
	assert.False(t, p.Unshown)
	assert.Zero(t, p.Wrong())
	assert.Empty(t, p.Survivors)
	wrong := countyOf(t, right+sample("as the model code has it", "pass", "18 ft 6 in"))
	p = wrong.ProveRule(wrong.Rule("intake-exhaust-distance"))
	assert.Equal(t, 1, p.Wrong())
	assert.Zero(t, p.Mutants, "nothing follows from wrong samples")
}

// A value that is restated, and parts that alter no outcome, reach no rule.
func TestOverridesThatAlterNoOutcome(t *testing.T) {
	pack := countyOf(t, strings.Replace(twelveFeet, "12 ft", "120 in", 1)+`
[[change]]
rule = "intake-exhaust-distance"
level = "note"
says = "too near"
title = "Other words"
caution = "take care"
reason = "restated"
`)
	rule := pack.Rule("intake-exhaust-distance")
	assert.Empty(t, rule.Reached)
	assert.Equal(t, "county", rule.Given["says"])
	assert.True(t, pack.ProveRule(rule).Inherited)
}

// Samples for a rule that nothing reaches stand beside those of the parent.
func TestSampleOfUnreachedRule(t *testing.T) {
	pack := countyOf(t, `
[[sample]]
rule = "intake-exhaust-distance"
name = "as the county sees it"
expect = "fail"
with = 'opening = [{ id = "stale", from_left = "12 ft" }]'
`)
	rule := pack.Rule("intake-exhaust-distance")
	p := pack.ProveRule(rule)
	assert.Len(t, p.Runs, len(builtIn(t, "irc-2021").Rule(rule.ID).Samples)+1)
	assert.Zero(t, p.Wrong())
}

// A base design of the same name in a local pack leaves the parent's samples as
// they are.
func TestBasesOfParentsStay(t *testing.T) {
	pack := countyOf(t, "[base.openings]\ndesign = '''\nformat = 1\n\n[project]\nname = \"Hut\"\nstage = \"permit\"\nunits = \"IP\"\n\n[dwelling]\n'''\n")
	for _, id := range []string{"intake-exhaust-distance", "opening-screened"} {
		assert.Zero(t, pack.ProveRule(pack.Rule(id)).Wrong(), id)
	}
}

// Of a chain of packs, each is proven by what it adds.
func TestChainOfPacks(t *testing.T) {
	head := func(id, parent string) string {
		return fmt.Sprintf("[pack]\nid = %q\ntitle = \"Invented\"\nunits = \"IP\"\nextends = [%q]\ndefault_base = \"openings\"\n", id, parent)
	}
	sample := "[[sample]]\nrule = \"intake-exhaust-distance\"\nname = \"12 ft\"\nexpect = \"pass\"\nwith = 'opening = [{ id = \"stale\", from_left = \"20 ft 6 in\" }]'\n"
	library := files(map[string]string{
		"state.rules.toml": head("state", "irc-2021") + twelveFeet + sample,
		"town.rules.toml":  head("town", "state.rules.toml") + strings.Replace(twelveFeet, "12 ft", "14 ft", 1),
		"fair.rules.toml":  head("fair", "state.rules.toml"),
	})
	fair, err := library.Pack("fair.rules.toml")
	require.NoError(t, err)
	p := fair.ProveRule(fair.Rule("intake-exhaust-distance"))
	assert.True(t, p.Inherited)
	require.Len(t, p.Runs, 1, "the state's own")
	assert.Zero(t, p.Wrong())
	town, err := library.Pack("town.rules.toml")
	require.NoError(t, err)
	p = town.ProveRule(town.Rule("intake-exhaust-distance"))
	require.Len(t, p.Differing, 1)
	assert.Equal(t, "state.rules.toml", p.Differing[0].Sample.File())
}

// An excuse that nothing needs is told.
func TestUnneededEquivalents(t *testing.T) {
	source, err := os.ReadFile("../cmd/ventlint/testdata/story/harbor-county.rules.toml")
	require.NoError(t, err)
	text := strings.Replace(string(source), "\n[[rule.sample]]", "\n[[rule.equivalent]]\nchange = \"no such change\"\nreason = \"none\"\n\n[[rule.sample]]", 1)
	pack, err := files(map[string]string{"x.rules.toml": text}).Pack("x.rules.toml")
	require.NoError(t, err)
	p := pack.ProveRule(pack.Rule("intake-height"))
	require.Len(t, p.Unneeded, 1)
	assert.Equal(t, "no such change", p.Unneeded[0].Change)
}
