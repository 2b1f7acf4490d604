package reportfmt

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

func decodedEvidence(t *testing.T, b Batch) sarifRun {
	t.Helper()
	decoder := json.NewDecoder(strings.NewReader(written(t, "sarif-evidence", b)))
	decoder.DisallowUnknownFields()
	var l sarifLog
	require.NoError(t, decoder.Decode(&l))
	require.Len(t, l.Runs, 1)
	return l.Runs[0]
}

// Sections 3.27.9 and 3.27.10: only a failed rule has a level.
func TestEvidenceHasEveryOutcomeWithItsKind(t *testing.T) {
	kinds := map[rules.Outcome]string{
		rules.Fail: "fail", rules.Open: "open", rules.Review: "review", rules.Pass: "pass",
		rules.Informational: "informational", rules.NotDue: "notApplicable", rules.NotApplicable: "notApplicable",
	}
	report := everyOutcome()
	run := decodedEvidence(t, batch(report))
	require.Len(t, run.Results, len(report.Results))
	seen := map[string]bool{}
	for _, r := range run.Results {
		seen[r.Properties.Outcome] = true
		require.Equal(t, kinds[rules.Outcome(r.Properties.Outcome)], r.Kind)
		require.Equal(t, r.Kind == "fail", r.Level != "none", r.Message.Text)
		require.NotEmpty(t, r.Message.Text)
		require.Equal(t, run.Tool.Driver.Rules[r.RuleIndex].ID, r.RuleID)
	}
	require.Len(t, seen, len(kinds))
	require.Equal(t, "error", resultOf(t, run, "model-code:working-space").Properties.Level)
}

func resultOf(t *testing.T, run sarifRun, rule string) sarifResult {
	t.Helper()
	for _, r := range run.Results {
		if r.RuleID == rule {
			return r
		}
	}
	require.Fail(t, "no result of "+rule)
	return sarifResult{}
}

// Section 3.27.23: in one run either all results tell of suppressions or none.
func TestEvidenceTellsOfSuppressionsEverywhere(t *testing.T) {
	for name, b := range batches() {
		for _, r := range decodedEvidence(t, b).Results {
			require.NotNil(t, r.Suppressions, name)
		}
	}
}

func TestEvidenceShowsVariancesAsSuppressions(t *testing.T) {
	run := decodedEvidence(t, batches()["variances"])
	list := *resultOf(t, run, "harbor-county:intake-exhaust-distance").Suppressions
	require.Len(t, list, 1)
	require.Equal(t, "inSource", list[0].Kind)
	require.Equal(t, "accepted", list[0].Status)
	require.Equal(t, "the dryer moves in the second phase of work", list[0].Justification)
	require.Equal(t, sarifSuppressionProperties{"harbor-county:intake-exhaust-distance", "fresh", "building official", "2026-12-31"}, *list[0].Properties)
	require.Empty(t, *resultOf(t, run, "model-code:house-pressure").Suppressions)
	require.True(t, run.Invocations[0].ExecutionSuccessful)
	require.Len(t, run.Invocations[0].Notifications, 2) // the variances that count for nothing
	require.Equal(t, "warning", run.Invocations[0].Notifications[0].Level)
}

// Sections 3.19.3, 3.49.15 and 3.53: what a rule cites is a section of a listed
// standard, by name and number.
func TestEvidenceCitesStandards(t *testing.T) {
	run := decodedEvidence(t, batches()["outcomes"])
	taxa := map[string]bool{}
	guids := map[string]bool{}
	for i, s := range run.Taxonomies {
		require.Equal(t, sarifComponent{s.Name, s.GUID}, run.Tool.Driver.Taxonomies[i])
		require.False(t, guids[s.GUID])
		guids[s.GUID] = true
		require.False(t, s.Comprehensive)
		require.NotEmpty(t, s.Taxa)
		for _, taxon := range s.Taxa {
			taxa[s.GUID+taxon.ID] = true
		}
	}
	for _, rule := range run.Tool.Driver.Rules {
		for _, r := range rule.Relationships {
			require.True(t, taxa[r.Target.Component.GUID+r.Target.ID], r.Target.ID)
			require.Equal(t, []string{"superset"}, r.Kinds)
		}
	}
	require.True(t, taxa[guidOf("Invented Model Code\x002021")+"M15.4 item 3"])
}

func TestCitations(t *testing.T) {
	r := separationRule()
	r.Basis = append(r.Basis, rules.Basis{Document: "common practice", Read: "practice"}, rules.Basis{Document: "Handbook", Read: "memory"},
		r.Basis[0])
	result := checker.Result{Rule: r, Pack: "p", Limits: []checker.Limit{{Basis: []rules.Basis{{Document: "Handbook", Section: "2", Read: "seen"}}}}}
	all := citations{}
	all.add([]placed{{"b", &result}, {"a", &result}})
	got := all.sorted()
	require.Equal(t, map[string][]citation{"p:intake-exhaust-distance": {
		{"Handbook", "", "2", ""},
		{"Handbook", "", "whole document", "from memory, check before relying on it"},
		{"Harbor County Code", "", "14.08.030", "from memory, check before relying on it"},
		{"Invented Model Code", "2021", "M15.4 item 3", ""},
	}}, got)
	require.Len(t, sarifStandards(got), 3)
}

// Section 3.27.24: where one result tells its state, all must.
func TestEvidenceTellsStatesOfAllResultsOrOfNone(t *testing.T) {
	for name, b := range batches() {
		for _, r := range decodedEvidence(t, b).Results {
			require.Equal(t, b.Baseline != nil, r.Baseline != "", name)
		}
	}
	count := map[string]int{}
	for _, r := range decodedEvidence(t, batches()["baseline"]).Results {
		count[r.Baseline]++
	}
	require.Equal(t, map[string]int{"new": 3, "unchanged": 2, "absent": 3}, count)
}

// A rule that the run no longer asks has no index.
func TestEvidenceOfAnAbsentResultOfAnUnknownRule(t *testing.T) {
	b := batch(report("a.vent.toml", quiet(rules.Pass)))
	b.Baseline = baselineFrom("sarif", batch(report("a.vent.toml", heaterPressure())))
	run := decodedEvidence(t, b)
	gone := run.Results[len(run.Results)-1]
	require.Equal(t, []any{"absent", -1, "error", "fail"}, []any{gone.Baseline, gone.RuleIndex, gone.Level, gone.Kind})
	require.Equal(t, `the house is drawn to 7.2 Pa below outdoors beside water heater "tank".`, gone.Message.Text)
}

func TestEvidenceNamesPacksAndFiles(t *testing.T) {
	run := decodedEvidence(t, batches()["several"])
	require.Len(t, run.Tool.Extensions, 2) // once, though both reports use them
	require.Equal(t, "3f0a", run.Tool.Extensions[0].Properties.Digest)
	require.Len(t, run.Artifacts, 3) // the one that could not be read as well
	require.False(t, run.Invocations[0].ExecutionSuccessful)
	require.Len(t, run.Properties.Reports, 2)
}

func TestEvidenceOfNothingIsNoSuccess(t *testing.T) {
	for _, name := range []string{"none", "nothing", "invalid"} {
		require.False(t, decodedEvidence(t, batches()[name]).Invocations[0].ExecutionSuccessful, name)
	}
}

// Appendix A.4 of RFC 9562 gives this identifier of a name.
func TestNameBasedIdentifiers(t *testing.T) {
	names := addresses
	names[3] = 0x10 // the name space of domain names
	require.Equal(t, "2ed6657de927568b95e12665a8aea6a2", fmt.Sprintf("%x", nameBased(names, "www.example.com")))
	require.Regexp(t, "^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$", guidOf("a"))
	require.NotEqual(t, guidOf("a"), guidOf("b"))
}
