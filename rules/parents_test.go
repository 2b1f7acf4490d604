package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Packs that give one name to two base designs can be extended together: their own
// samples keep their own. A pack settles the name by giving it.
func TestBasesOfOneName(t *testing.T) {
	head := "[pack]\nid = \"county\"\ntitle = \"A county (invented)\"\nunits = \"IP\"\nextends = [\"practice\", \"iecc-2021\"]\n"
	sample := "\n[[sample]]\nrule = \"envelope-tested\"\nname = \"the county's house\"\nexpect = \"open\"\nbase = \"house\"\n"
	base := "\n[base.house]\ndesign = '''\nformat = 1\n\n[project]\nname = \"Hut\"\nstage = \"final\"\nunits = \"IP\"\n\n[dwelling]\n'''\n"
	for text, wrong := range map[string]string{
		head:                 "",
		head + base + sample: "",
		head + sample:        `packs "practice" and "iecc-2021" both hold a base design "house"`,
	} {
		pack, err := files(map[string]string{"county.rules.toml": text}).Pack("county.rules.toml")
		if wrong != "" {
			assert.ErrorContains(t, err, wrong)
			continue
		}
		require.NoError(t, err)
		for _, id := range []string{"envelope-tested", "recovery-efficacy", "filter-class"} {
			if rule := pack.Rule(id); rule != nil {
				assert.Zero(t, pack.ProveRule(rule).Wrong(), id)
			}
		}
	}
}

// A sample of a rule that the pack switches off says why it is in vain.
func TestSampleOfARuleThatIsOff(t *testing.T) {
	_, err := files(map[string]string{"county.rules.toml": `
[pack]
id = "county"
title = "A county (invented)"
units = "IP"
extends = ["irc-2021"]
default_base = "openings"

[[change]]
rule = "control-marking"
off = true
reason = "ordinance 3"

[[sample]]
rule = "control-marking"
name = "marked"
expect = "pass"
`}).Pack("county.rules.toml")
	assert.ErrorContains(t, err, `county.rules.toml:15:8: rule "control-marking" is switched off by pack "county"`)
}
