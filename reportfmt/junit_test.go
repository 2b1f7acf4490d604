package reportfmt

import (
	"encoding/xml"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

func decodedJUnit(t *testing.T, b Batch) junitSuites {
	t.Helper()
	var all junitSuites
	require.NoError(t, xml.Unmarshal([]byte(written(t, "junit", b)), &all))
	return all
}

// A host must show as failed what makes the review fail, and nothing else.
func TestJUnitFailsWhatFailsTheReview(t *testing.T) {
	for name, b := range batches() {
		for _, gate := range []Gate{{}, {Level: rules.Warning}, {Level: rules.Note}, {NewOnly: true}} {
			b.Gate = gate
			want := 0
			for _, r := range b.Reports {
				c := b.Baseline.changes(r)
				for i := range r.Results {
					if gate.stops(&r.Results[i], c) {
						want++
					}
				}
			}
			all := decodedJUnit(t, b)
			require.Equal(t, want, all.Failures, name)
			require.Equal(t, blocked(t, b), all.Failures > 0, name)
		}
	}
}

func TestJUnitCountsAddUp(t *testing.T) {
	for name, b := range batches() {
		all := decodedJUnit(t, b)
		tests := 0
		for _, s := range all.Suites {
			require.Len(t, s.Cases, s.Tests, name)
			tests += s.Tests
		}
		require.Equal(t, tests, all.Tests, name)
	}
}

func TestJUnitOfAReviewHasACaseForEachResult(t *testing.T) {
	report := everyOutcome()
	all := decodedJUnit(t, batch(report))
	require.Len(t, all.Suites, 1)
	s := all.Suites[0]
	require.Equal(t, []int{len(report.Results), 3, 0, 6}, []int{s.Tests, s.Failures, s.Errors, s.Skipped})
	open := s.Cases[4]
	require.Equal(t, "open", open.Failure.Type)
	require.Contains(t, open.Failure.Text, "missing: ventilator.erv-1.access.working_depth\n")
	require.Equal(t, "does not apply: the dwelling has no garage", s.Cases[10].Skipped.Message)
	require.Contains(t, s.Cases[7].Skipped.Message, "accepted: ")
	require.Contains(t, s.Cases[7].Skipped.Text, "until 2026-12-31")
}

func TestJUnitNamesAreUnique(t *testing.T) {
	all := decodedJUnit(t, batch(report("a.vent.toml", failedSeparation(), failedSeparation(), acceptedSeparation(), failedSeparation())))
	seen := map[string]bool{}
	for _, c := range all.Suites[0].Cases {
		require.False(t, seen[c.Name], c.Name)
		seen[c.Name] = true
	}
	require.True(t, seen[`harbor-county:intake-exhaust-distance: intake "fresh", exhaust "stale" (3)`])
}

func TestJUnitOfACleanReviewHasACaseThatPasses(t *testing.T) {
	all := decodedJUnit(t, batches()["clean"])
	require.Equal(t, []int{2, 0, 0}, []int{all.Tests, all.Failures, all.Errors})
	require.Equal(t, `model-code:whole-house-rate: ventilator "erv-1"`, all.Suites[0].Cases[0].Name)
	require.Nil(t, all.Suites[0].Cases[0].Skipped)
}

func TestJUnitShowsWhatWasNotCheckedAsAnError(t *testing.T) {
	for name, want := range map[string]int{"invalid": 2, "nothing": 1, "none": 1, "several": 1, "clean": 0} {
		require.Equal(t, want, decodedJUnit(t, batches()[name]).Errors, name)
	}
	broken := decodedJUnit(t, batches()["invalid"]).Suites[0].Cases[0]
	require.Equal(t, "2 mistakes: nothing in this file was checked", broken.Error.Message)
	require.Contains(t, broken.Error.Text, "designs/broken.vent.toml:12:9: dwelling.floor_area: ")
}

func TestJUnitTellsOfRemarks(t *testing.T) {
	require.Contains(t, decodedJUnit(t, batches()["variances"]).Suites[0].Out, "it ended on 2026-01-31 (line 140)")
}

// XML 1.0 has no way to write some characters, and one way to end a text early.
func TestJUnitSurvivesEveryText(t *testing.T) {
	r := failedSeparation()
	r.Message = "a ]]> b \x00\x0b\ufffe\uffff <c> &d; \"e\""
	failure := decodedJUnit(t, batch(report("a.vent.toml", r))).Suites[0].Cases[0].Failure
	require.Contains(t, failure.Text, `finding: a ]]> b \x00\x0b\ufffe\uffff <c> &d; "e"`)
	require.Contains(t, failure.Message, `a ]]> b \x00\x0b\ufffe\uffff <c> &d; "e"`)
}

func FuzzJUnit(f *testing.F) {
	f.Add("a ]]> b \x00 \ufffe", "c&d;<e>")
	f.Fuzz(func(t *testing.T, message, label string) {
		r := failedSeparation()
		r.Message, r.Subjects = message, []checker.Subject{{Label: label}}
		decodedJUnit(t, batch(report(label, r)))
	})
}
