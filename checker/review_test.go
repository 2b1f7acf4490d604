package checker_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
)

const today = "2026-03-31"

func shipped(t testing.TB, name string) string {
	t.Helper()
	source, err := os.ReadFile(filepath.Join("..", "testdata", "designs", filepath.FromSlash(name)))
	require.NoError(t, err)
	return string(source)
}

func loaded(t testing.TB, source string) *design.Design {
	t.Helper()
	d, problems := design.Load("house.vent.toml", []byte(source))
	require.Empty(t, problems)
	return d
}

// library keeps the shipped packs compiled for all tests, which run one after the
// other.
var library = rules.NewLibrary(nil)

func packs(t testing.TB, names ...string) []*rules.Effective {
	t.Helper()
	var list []*rules.Effective
	for _, name := range names {
		pack, err := library.Pack(name)
		require.NoError(t, err)
		list = append(list, pack)
	}
	return list
}

func reviewed(t testing.TB, source string, names ...string) *checker.Report {
	t.Helper()
	return checker.Review(loaded(t, source), checker.Request{File: "house.vent.toml", Packs: packs(t, names...), Date: today})
}

// outcomes keys every result by rule and subjects.
func outcomes(r *checker.Report) map[string]rules.Outcome {
	all := map[string]rules.Outcome{}
	for _, result := range r.Results {
		key := result.Pack + ":" + result.Rule.ID
		for _, s := range result.Subjects {
			key += " " + s.ID
		}
		all[key] = result.Outcome
	}
	return all
}

func TestShippedHouseIsClean(t *testing.T) {
	r := reviewed(t, shipped(t, "ok/alder-court.vent.toml"), "irc-2021", "practice")
	for _, result := range r.Results {
		assert.False(t, result.Problem(), "%s: %s %v", result.Rule.ID, result.Message, result.Missing)
	}
	assert.Greater(t, r.Count().Of[rules.Pass], 200)
	assert.Empty(t, r.Remarks)
}

// Every rule that ran is in the report, and every result has a place in the file.
func TestEveryRuleIsAccountedFor(t *testing.T) {
	source := shipped(t, "faults/alder-court-faults.vent.toml")
	r := reviewed(t, source, "irc-2021", "practice")
	lines := strings.Count(source, "\n") + 1
	asked := map[string]bool{}
	for _, result := range r.Results {
		asked[result.Pack+":"+result.Rule.ID] = true
		assert.Positive(t, result.Position.Line, result.Rule.ID)
		assert.LessOrEqual(t, result.Position.Line, lines)
		assert.Positive(t, result.Position.Column, result.Rule.ID)
	}
	for _, pack := range packs(t, "irc-2021", "practice") {
		for _, rule := range pack.Rules {
			assert.True(t, asked[pack.Head.ID+":"+rule.ID], rule.ID)
		}
	}
}

func TestSameDesignSameReport(t *testing.T) {
	source := shipped(t, "faults/alder-court-faults.vent.toml")
	first, second := reviewed(t, source, "irc-2021", "practice"), reviewed(t, source, "irc-2021", "practice")
	require.Equal(t, len(first.Results), len(second.Results))
	for i := range first.Results {
		a, b := first.Results[i], second.Results[i]
		assert.Equal(t, a.Rule.ID, b.Rule.ID)
		assert.Equal(t, a.Position, b.Position)
		assert.Equal(t, a.Message, b.Message)
	}
}

// A rule that the stage does not ask for yet is told as such, never as passed.
func TestStages(t *testing.T) {
	at := func(stage string) map[string]rules.Outcome {
		source := strings.Replace(shipped(t, "ok/alder-court.vent.toml"), `stage = "permit"`, `stage = "`+stage+`"`, 1)
		return outcomes(reviewed(t, source, "irc-2021"))
	}
	concept, permit, final := at("concept"), at("permit"), at("final")
	assert.Equal(t, rules.NotDue, concept["irc-2021:control-override"])
	assert.Equal(t, rules.Pass, permit["irc-2021:control-override hrv"])
	for _, rule := range packs(t, "irc-2021")[0].Rules {
		if rule.Due == "final" {
			assert.Equal(t, rules.NotDue, permit["irc-2021:"+rule.ID], rule.ID)
		}
	}
	for key, outcome := range final {
		assert.NotEqual(t, rules.NotDue, outcome, key)
	}
}

// The rules of a pack that another one of the review extends are asked once.
func TestExtendedPackIsAskedOnce(t *testing.T) {
	local := []byte(`
[pack]
id = "harbor-county"
title = "Harbor County amendments"
units = "IP"
extends = ["irc-2021"]
`)
	library := rules.NewLibrary(func(string) ([]byte, error) { return local, nil })
	county, err := library.Pack("harbor-county.rules.toml")
	require.NoError(t, err)
	model, err := library.Pack("irc-2021")
	require.NoError(t, err)
	d := loaded(t, shipped(t, "ok/alder-court.vent.toml"))
	both := checker.Review(d, checker.Request{Packs: []*rules.Effective{model, county}, Date: today})
	alone := checker.Review(d, checker.Request{Packs: []*rules.Effective{county}, Date: today})
	assert.Len(t, both.Packs, 1)
	assert.Equal(t, len(alone.Results), len(both.Results))
}

// A site far larger than a house is judged in full. What asks nothing is counted from
// some number on, and counts all the same.
func TestGiantSites(t *testing.T) {
	d := loaded(t, street(t, 200, 500))
	r := checker.Review(d, checker.Request{File: "street.vent.toml", Packs: packs(t, "irc-2021", "practice"), Date: today})
	assert.Zero(t, r.Unreached)
	all, listed := 0, 0
	for _, n := range r.Count().Of {
		all += n
	}
	for _, result := range r.Results {
		switch {
		case result.Others > 0:
			assert.Empty(t, result.Subjects)
			assert.Contains(t, []rules.Outcome{rules.Pass, rules.NotApplicable}, result.Outcome)
			assert.Contains(t, result.Reasons[0], "further combinations")
		default:
			listed++
		}
	}
	assert.Greater(t, all, 150_000)
	assert.Less(t, listed, 10_000)
}

// Packs that are asked beside each other give the report that they give one after the
// other, whatever they find.
func TestPacksBesideEachOther(t *testing.T) {
	for _, name := range []string{"ok/alder-court", "faults/alder-court-faults", "concept/early-idea"} {
		d := loaded(t, shipped(t, name+".vent.toml"))
		for _, depth := range []checker.Depth{checker.Evidence, checker.Outcomes, checker.Problems} {
			q := checker.Request{File: name, Packs: packs(t, "irc-2021", "practice", "ashrae-62-2-2019"), Date: today, Depth: depth}
			want := checker.Review(d, q)
			q.Beside = true
			for range 3 {
				assert.Equal(t, want, checker.Review(d, q))
			}
		}
	}
}
