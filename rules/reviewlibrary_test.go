package rules_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// A library for reviews holds the same rules, limits and tables as one that looks
// at everything, and they judge a whole house alike.
func TestReviewLibraryHoldsTheSame(t *testing.T) {
	source, err := os.ReadFile("../testdata/designs/ok/alder-court.vent.toml")
	require.NoError(t, err)
	house, problems := design.Load("house", source)
	require.Empty(t, problems)
	library := rules.NewReviewLibrary(nil)
	for _, id := range rules.BuiltIn() {
		whole := builtIn(t, id)
		known, err := library.Pack(id)
		require.NoError(t, err)
		assert.Equal(t, whole.Digest(), known.Digest(), id)
		assert.Equal(t, whole.Off, known.Off, id)
		assert.Len(t, known.Limits, len(whole.Limits), id)
		assert.Len(t, known.Tables, len(whole.Tables), id)
		require.Len(t, known.Rules, len(whole.Rules), id)
		for i, rule := range whole.Rules {
			alike(t, rule, known.Rules[i])
			assert.Equal(t, rule.Ask(facts.Of(house)), known.Rules[i].Ask(facts.Of(house)), rule.ID)
		}
	}
}

func alike(t *testing.T, whole, known *rules.Compiled) {
	t.Helper()
	assert.Equal(t, whole.ID, known.ID)
	assert.Equal(t, whole.Position(), known.Position(), whole.ID)
	assert.Equal(t, whole.Pack, known.Pack, whole.ID)
	assert.Equal(t, whole.Given, known.Given, whole.ID)
	assert.Equal(t, whole.Each(), known.Each(), whole.ID)
	assert.Equal(t, whole.LimitsUsed(), known.LimitsUsed(), whole.ID)
	assert.Equal(t, whole.TablesUsed(), known.TablesUsed(), whole.ID)
	assert.Equal(t, whole.Distances(), known.Distances(), whole.ID)
	assert.Equal(t, whole.Reached, known.Reached, whole.ID)
	if whole.Given["sample"] == "" {
		assert.Empty(t, len(known.Samples), whole.ID)
	}
}

// A library for reviews finds every mistake of a pack from outside.
func TestReviewLibraryRefusesTheSame(t *testing.T) {
	t.Chdir("..")
	whole, reviews := rules.NewLibrary(os.ReadFile), rules.NewReviewLibrary(os.ReadFile)
	files, err := filepath.Glob(malformed + "/*.rules.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		_, want := whole.Pack(filepath.ToSlash(file))
		_, got := reviews.Pack(filepath.ToSlash(file))
		require.Error(t, want, file)
		assert.EqualError(t, got, want.Error(), file)
	}
}

// What is asked briefly comes out the same; only what asks nothing of the designer
// comes without its reasons.
func TestAskedForProblems(t *testing.T) {
	source, err := os.ReadFile("../testdata/designs/faults/alder-court-faults.vent.toml")
	require.NoError(t, err)
	house, problems := design.Load("house", source)
	require.Empty(t, problems)
	bare := 0
	for _, rule := range builtIn(t, "irc-2021").Rules {
		full, brief := rule.Ask(facts.Of(house)), rule.AskFor(facts.Of(house), rules.Problems)
		require.Len(t, brief, len(full), rule.ID)
		for i := range full {
			if o := brief[i].Outcome; o == rules.Pass || o == rules.NotApplicable {
				bare++
				assert.Empty(t, brief[i].Require.Reads, rule.ID)
				full[i].When, full[i].Require = brief[i].When, brief[i].Require
			}
			full[i].When.Reads, full[i].When.Parts = brief[i].When.Reads, brief[i].When.Parts
			assert.Equal(t, full[i], brief[i], rule.ID)
		}
	}
	assert.Positive(t, bare)
}
