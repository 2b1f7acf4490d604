package rules

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules/facts"
)

// A whole house under the largest pack and common practice takes a small part of
// what may be spent.
func TestAHouseTakesLittleWork(t *testing.T) {
	source, err := os.ReadFile(filepath.Join("..", "testdata", "designs", "ok", "alder-court.vent.toml"))
	require.NoError(t, err)
	d, problems := design.Load("house.vent.toml", source)
	require.Empty(t, problems)
	f := facts.Of(d)
	library := NewLibrary(nil)
	for _, name := range []string{"washington-2021", "practice"} {
		pack, err := library.Pack(name)
		require.NoError(t, err)
		for _, r := range pack.Rules {
			for _, j := range r.Ask(f) {
				assert.False(t, j.Cut, r.ID)
			}
		}
	}
	assert.Positive(t, f.Work)
	assert.Less(t, f.Work, mostWork/8)
}

// What is not reached is for a person to judge, and is told as cut: each rule
// alone stops at its combinations, all together at their work.
func TestWhatIsNotReachedIsTold(t *testing.T) {
	var b strings.Builder
	b.WriteString("format = 1\n[project]\nname = \"crowd\"\nstage = \"final\"\nunits = \"IP\"\n[dwelling]\n")
	for i := range 300 {
		fmt.Fprintf(&b, "[[opening]]\nid = \"o%d\"\nkind = %q\n", i, []string{"intake", "exhaust"}[i%2])
	}
	d, problems := design.Load("crowd.vent.toml", []byte(b.String()))
	require.Empty(t, problems)
	pack, err := NewLibrary(nil).Pack("irc-2021")
	require.NoError(t, err)
	f := facts.Of(d)
	cut, whole := 0, 0
	for _, r := range pack.Rules {
		found := r.Ask(f)
		require.NotEmpty(t, found, r.ID)
		last := found[len(found)-1]
		if !last.Cut {
			whole++
			continue
		}
		cut++
		assert.Equal(t, Review, last.Outcome)
		assert.Contains(t, last.Message, "a person must judge")
	}
	assert.Positive(t, whole)
	assert.Positive(t, cut)
	assert.Less(t, f.Work, mostWork+mostWork/10)
}

// A rule that is open for very many inputs names some and counts the others.
func TestAMessageNamesSomeOfVeryMany(t *testing.T) {
	var b strings.Builder
	b.WriteString("format = 1\n[project]\nname = \"x\"\nstage = \"final\"\nunits = \"IP\"\n[dwelling]\n")
	for i := range 80 {
		fmt.Fprintf(&b, "[[duct]]\nid = \"d%d\"\nairstream = \"supply-air\"\n", i)
	}
	d, problems := design.Load("x.vent.toml", []byte(b.String()))
	require.Empty(t, problems)
	source := `[pack]
id = "county"
title = "A county (invented)"
units = "IP"

[[rule]]
id = "sealed"
title = "Ducts sealed"
topic = "ducts"
level = "error"
due = "concept"
require = "all(ducts, .sealed)"
says = "some duct is not sealed"
remedy = "seal it"
basis = [{ document = "an invented text", read = "practice" }]
`
	pack, err := NewLibrary(func(string) ([]byte, error) { return []byte(source), nil }).Pack("county.rules.toml")
	require.NoError(t, err)
	found := pack.Rules[0].Ask(facts.Of(d))
	require.Len(t, found, 1)
	assert.Len(t, found[0].Require.Missing, 80)
	assert.Equal(t, 50, strings.Count(found[0].Message, "sealed"))
	assert.Contains(t, found[0].Message, ", duct.d49.sealed, and 30 more")
}

// Where reasons take too much, outcomes stay what they are, and a failure still says
// that it is one.
func TestReasonsAreBounded(t *testing.T) {
	source, err := os.ReadFile(filepath.Join("..", "testdata", "designs", "faults", "alder-court-faults.vent.toml"))
	require.NoError(t, err)
	d, problems := design.Load("house.vent.toml", source)
	require.Empty(t, problems)
	pack, err := NewLibrary(nil).Pack("irc-2021")
	require.NoError(t, err)
	all, few := facts.Of(d), facts.Of(d)
	few.Told = facts.Told{Problems: mostProblems, Rest: mostRest}
	failing := 0
	for _, r := range pack.Rules {
		full, bare := r.Ask(all), r.Ask(few)
		require.Len(t, bare, len(full))
		for i := range full {
			assert.Equal(t, full[i].Outcome, bare[i].Outcome)
			assert.Empty(t, bare[i].Require.Parts)
			if bare[i].Outcome == Fail {
				failing++
				assert.Contains(t, bare[i].Message, "too much to tell")
			}
		}
	}
	assert.Positive(t, failing)
	assert.Equal(t, all.Work, few.Work)
}
