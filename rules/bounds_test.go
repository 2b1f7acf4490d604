package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document/documenttest"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// lone is a pack of one rule.
func lone(t *testing.T, each, require_ string) *rules.Compiled {
	t.Helper()
	pack, err := files(map[string]string{"lone.rules.toml": fmt.Sprintf(`
[pack]
id = "lone"
title = "One rule (invented)"
units = "IP"

[[rule]]
id = "the-rule"
title = "The rule"
topic = "openings"
level = "error"
due = "permit"
each = { %s }
require = '%s'
says = "so it is"
remedy = "mend it"
basis = [{ document = "None", read = "practice" }]
`, each, require_)}).Pack("lone.rules.toml")
	require.NoError(t, err)
	return pack.Rule("the-rule")
}

// street is a design with many sources, and nothing else.
func street(t *testing.T, sources int) *design.Design {
	t.Helper()
	var b strings.Builder
	b.WriteString("format = 1\n[project]\nname = \"Street\"\nstage = \"permit\"\nunits = \"IP\"\n[dwelling]\n")
	for i := range sources {
		fmt.Fprintf(&b, "[[source]]\nid = \"s%d\"\nkind = \"trash\"\n", i)
	}
	d, problems := design.Load("street", []byte(b.String()))
	require.Empty(t, problems)
	return d
}

// A rule over more combinations than anyone needs ends with a person to judge,
// never with a pass.
func TestTooManyCombinations(t *testing.T) {
	rule := lone(t, `a = "sources", b = "sources", c = "sources"`, `a.kind == b.kind`)
	var found []rules.Judgement
	documenttest.AtMost(t, 200, func() { found = rule.Ask(facts.Of(street(t, 2000))) })
	last := found[len(found)-1]
	assert.Equal(t, rules.Review, last.Outcome)
	assert.Equal(t, "the rule ranges over more than 50000 combinations of things: a person must judge those beyond", last.Reason)
	assert.Equal(t, 50_000, judgements(found[:len(found)-1]))
}

// judgements counts what judgements stand for.
func judgements(found []rules.Judgement) (n int) {
	for _, j := range found {
		n += max(1, j.Others)
	}
	return n
}

// Exactly as many as are judged are judged in full. Of very many that ask nothing, some
// are told, and the others counted by their outcome.
func TestAsManyCombinationsAsAreJudged(t *testing.T) {
	rule := lone(t, `a = "sources", b = "sources"`, `a.kind == b.kind`)
	found := rule.Ask(facts.Of(street(t, 223))) // 49,729 pairs
	assert.Equal(t, 223*223, judgements(found))
	require.Len(t, found, 251)
	for _, j := range found[:250] {
		assert.Equal(t, rules.Pass, j.Outcome)
		assert.Len(t, j.Subjects, 2)
		assert.Len(t, j.Require.Parts, 1)
	}
	assert.Equal(t, rules.Judgement{Outcome: rules.Pass, Others: 223*223 - 250, Reason: "49479 further combinations of things come out so, and are not listed"}, found[250])

	found = rule.Ask(facts.Of(street(t, 15))) // 225 pairs
	assert.Len(t, found, 15*15)
	rule = lone(t, `a = "sources", b = "sources"`, `a.id != b.id`)
	found = rule.Ask(facts.Of(street(t, 70)))
	failing := 0
	for _, j := range found {
		if j.Outcome == rules.Fail {
			failing++
		}
	}
	assert.Equal(t, 70, failing, "every problem is told by itself")
	assert.Equal(t, 70*70, judgements(found))
}

// Of all rules together, so many are told and no more; all are counted.
func TestListsOfManyRules(t *testing.T) {
	f := facts.Of(street(t, 100))
	rule := lone(t, `a = "sources", b = "sources"`, `a.kind == b.kind`)
	for range 30 {
		assert.Equal(t, 100*100, judgements(rule.Ask(f)))
	}
	assert.Equal(t, 4000, f.Told.Listed)
	assert.Len(t, rule.Ask(f), 1)
}

// The steps of all subjects come from one pool.
func TestStepsAreShared(t *testing.T) {
	rule := lone(t, `a = "sources"`, `all(sources, let x = #; any(sources, .id == x.id))`)
	found := rule.Ask(facts.Of(street(t, 300)))
	last := found[len(found)-1]
	assert.Equal(t, rules.Review, last.Outcome)
	assert.Equal(t, "the rule takes more than 300000 steps on this design: a person must judge what was not reached", last.Reason)
	assert.Less(t, len(found), 9, "about 45000 steps each")
	for _, j := range found[:len(found)-1] {
		assert.Equal(t, rules.Pass, j.Outcome)
	}
}

// Giant packs are refused, or read within bounds.
func TestGiantPacks(t *testing.T) {
	head := "[pack]\nid = \"giant\"\ntitle = \"Giant (invented)\"\nunits = \"IP\"\n"
	row := strings.Repeat("1,", 4000)
	for name, text := range map[string]string{
		"table of too many cells": head + "[table.giant]\ntitle = \"Giant\"\nvalue = \"\"\nrow = { input = \"n\", unit = \"\", read = \"from\", edges = [1] }\ncells = [" + strings.Repeat("["+row+"],", 20) + "]\nbasis = []\n",
		"too many bytes":          head + "# " + strings.Repeat("x", 1<<20),
		"nothing but limits":      head + manyLimits(9000),
		"misspelled limits":       strings.Replace(head, "units", "extends = [\"irc-2021\"]\nunits", 1) + manyLimits(9000),
		"many rules of one id":    head + strings.Repeat("[[rule]]\nid = \"x\"\ntitle = \"x\"\ntopic = \"rates\"\nlevel = \"note\"\ndue = \"final\"\nrequire = 'len(rooms) > 0'\nsays = \"x\"\nremedy = \"x\"\nbasis = [{ document = \"x\", read = \"seen\" }]\n", 2000),
	} {
		t.Run(name, func(t *testing.T) {
			library := files(map[string]string{"giant.rules.toml": text})
			var err error
			documenttest.AtMost(t, 200, func() { _, err = library.Pack("giant.rules.toml") })
			var invalid *rules.InvalidPack
			require.ErrorAs(t, err, &invalid)
			assert.LessOrEqual(t, len(invalid.Problems), 1001)
		})
	}
}

func manyLimits(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "limits.intake_to_exhausts_%d = { value = 1, basis = [] }\n", i)
	}
	return b.String()
}
