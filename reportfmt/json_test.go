package reportfmt

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
)

func decodedJSON(t *testing.T, b Batch) jsonDocument {
	t.Helper()
	decoder := json.NewDecoder(strings.NewReader(written(t, "json", b)))
	decoder.DisallowUnknownFields()
	var d jsonDocument
	require.NoError(t, decoder.Decode(&d))
	return d
}

func TestJSONIsComplete(t *testing.T) {
	report := everyOutcome()
	d := decodedJSON(t, batch(report))
	require.Equal(t, "ventlint-report", d.Format)
	require.Equal(t, 1, d.Version)
	require.Len(t, d.Reports, 1)
	require.Len(t, d.Reports[0].Results, len(report.Results))
	for i, r := range report.Results {
		got := d.Reports[0].Results[i]
		require.Equal(t, string(r.Outcome), got.Outcome)
		require.Equal(t, r.Rule.ID, got.Rule)
		require.Equal(t, string(r.Level), got.Level)
		require.Len(t, got.Comparisons, len(r.Comparisons))
		require.Len(t, got.Missing, len(r.Missing))
		require.Len(t, got.Inputs, len(r.Inputs))
		require.Len(t, got.Basis, len(r.Rule.Basis))
		require.Equal(t, r.Variance != nil, got.Variance != nil)
	}
}

func TestJSONCountsAddUp(t *testing.T) {
	for name, b := range batches() {
		for _, r := range decodedJSON(t, b).Reports {
			c := r.Counts
			require.Equal(t, c.Decided, c.Fail+c.Open+c.Review+c.Pass+c.Accepted, name)
			require.Equal(t, len(r.Results), c.Decided+c.Informational+c.NotDue+c.NotApplicable, name)
		}
	}
}

func TestJSONListsAreNeverNull(t *testing.T) {
	for name, b := range batches() {
		require.NotContains(t, written(t, "json", b), "null", name)
	}
	empty := decodedJSON(t, Batch{Reports: []*checker.Report{{File: "a.vent.toml"}}})
	require.NotNil(t, empty.Reports[0].Results)
	require.NotNil(t, empty.Failures)
}

func TestJSONProblemOfAWholeFileHasNoPosition(t *testing.T) {
	d := decodedJSON(t, batches()["invalid"])
	require.NotNil(t, d.Failures[0].Problems[0].Position)
	require.Nil(t, d.Failures[1].Problems[0].Position)
}
