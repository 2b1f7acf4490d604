package rules_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/expression"
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

// What is told of a judgement does not change it; only what nobody asks for is left
// out.
func TestTellings(t *testing.T) {
	seen := map[rules.Outcome]bool{}
	for _, name := range []string{"faults/alder-court-faults", "concept/early-idea"} {
		source, err := os.ReadFile("../testdata/designs/" + name + ".vent.toml")
		require.NoError(t, err)
		house, problems := design.Load(name, source)
		require.Empty(t, problems)
		for told := rules.Problems; told <= rules.OutcomesAlone; told++ {
			all, some := facts.Of(house), facts.Of(house)
			for _, rule := range builtIn(t, "practice").Rules {
				full, short := judged(rule, all, rules.Everything), judged(rule, some, told)
				require.Len(t, short, len(full), rule.ID)
				for i := range full {
					seen[full[i].Outcome] = true
					assert.Equal(t, full[i].Outcome, short[i].Outcome, rule.ID)
					assert.Equal(t, full[i].Subjects, short[i].Subjects, rule.ID)
					checkTold(t, told, full[i], short[i])
				}
			}
			assert.Equal(t, all.Work, some.Work, "what is told takes no steps from rules")
		}
	}
	for _, o := range rules.Outcomes() {
		assert.Equal(t, o != rules.Informational, seen[o], o)
	}
}

func judged(rule *rules.Compiled, about *facts.Facts, told rules.Telling) (found []rules.Judgement) {
	rule.AskEach(about, told, func(j rules.Judgement) {
		j.Subjects = slices.Clone(j.Subjects)
		found = append(found, j)
	})
	return found
}

func checkTold(t *testing.T, told rules.Telling, full, short rules.Judgement) {
	t.Helper()
	problem := slices.Contains([]rules.Outcome{rules.Fail, rules.Open, rules.Review}, full.Outcome)
	switch {
	case told == rules.Problems && problem:
		assert.Equal(t, full.When, short.When)
		assert.Equal(t, full.Require, short.Require)
		assert.Equal(t, full.Message, short.Message)
		assert.Equal(t, full.Remedy, short.Remedy)
	case told == rules.Margins && full.Outcome == rules.Pass:
		sized := slices.DeleteFunc(full.Require.Parts, func(p expression.Comparison) bool { return !strings.ContainsAny(p.Operator, "<>") })
		require.Len(t, short.Require.Parts, len(sized))
		for i, p := range short.Require.Parts {
			assert.Equal(t, sized[i].Text, p.Text)
			assert.Equal(t, sized[i].Found, p.Found)
			assert.Equal(t, sized[i].Required, p.Required)
		}
		assert.Empty(t, short.Require.Reads)
	default:
		assert.Empty(t, short.Require.Parts)
		assert.Empty(t, short.Remedy)
	}
}
