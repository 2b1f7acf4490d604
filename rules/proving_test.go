package rules

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// provenPack has one rule with samples that notice every change of it.
func provenPack(t *testing.T) *Effective {
	t.Helper()
	source := `[pack]
id = "county"
title = "A county (invented)"
units = "IP"
default_base = "lot"

[base.lot]
design = '''
format = 1
[project]
name = "invented"
stage = "final"
units = "IP"
[dwelling]
bedrooms = 3
'''

[[rule]]
id = "bedrooms"
title = "Two bedrooms or more"
topic = "rates"
level = "error"
due = "concept"
require = "dwelling.bedrooms >= 2"
says = "too few"
remedy = "build another"
basis = [{ document = "an invented text", read = "practice" }]
`
	for _, s := range []string{"pass 3", "pass 2", "fail 1"} {
		expect, bedrooms, _ := strings.Cut(s, " ")
		source += "[[rule.sample]]\nname = \"" + s + "\"\nexpect = \"" + expect + "\"\nwith = '''\n[dwelling]\nbedrooms = " + bedrooms + "\n'''\n"
	}
	pack, err := NewLibrary(func(string) ([]byte, error) { return []byte(source), nil }).Pack("county.rules.toml")
	require.NoError(t, err)
	return pack
}

// A proof that has no work left says what it did not try, and draws no conclusion
// from it.
func TestAProofTellsWhatItDidNotTry(t *testing.T) {
	pack := provenPack(t)
	whole := pack.Proving()
	p := whole.Rule(pack.Rules[0])
	require.Zero(t, p.Wrong())
	require.Zero(t, p.Untried)
	require.False(t, p.Unchanged)
	require.NotEmpty(t, p.Gaps)
	all := mostProof - whole.left
	for left, stage := 0, 0; left <= all; left += 10 {
		v := &Proving{pack, left}
		got := v.Rule(pack.Rules[0])
		assert.Equal(t, len(p.Runs), len(got.Runs)+got.Untried)
		assert.Subset(t, p.Survivors, got.Survivors)
		now := 0
		switch {
		case got.Untried == 0 && !got.Unchanged:
			now = 2
			assert.Equal(t, p.Mutants, got.Mutants)
		case got.Untried == 0:
			now = 1
			assert.Less(t, got.Mutants, p.Mutants)
			assert.Equal(t, p.Gaps, got.Gaps)
		default:
			assert.True(t, got.Unchanged)
			assert.Zero(t, got.Mutants)
			assert.Empty(t, got.Gaps)
		}
		assert.GreaterOrEqual(t, now, stage, "more work tries more")
		stage = now
	}
}

// What a proof spends on one rule is not there for the next.
func TestRulesOfAProofShareTheirWork(t *testing.T) {
	pack := provenPack(t)
	v := &Proving{pack, 1}
	assert.Equal(t, 2, v.Rule(pack.Rules[0]).Untried)
	assert.Equal(t, 3, v.Rule(pack.Rules[0]).Untried)
}

// The largest packs that ship take a small part of what a proof may.
func TestShippedPacksTakeLittleOfAProof(t *testing.T) {
	if testing.Short() {
		t.Skip("proves whole packs")
	}
	library := NewLibrary(nil)
	for _, id := range []string{"irc-2021", "washington-2021"} {
		pack, err := library.Pack(id)
		require.NoError(t, err)
		v := pack.Proving()
		for _, r := range pack.Rules {
			v.Rule(r)
		}
		t.Logf("%s: %d units of work", id, mostProof-v.left)
		assert.Less(t, mostProof-v.left, mostProof/8, id)
	}
}
