package reportfmt

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func decodedGitLab(t *testing.T, b Batch) []gitlabIssue {
	t.Helper()
	decoder := json.NewDecoder(strings.NewReader(written(t, "gitlab", b)))
	decoder.DisallowUnknownFields()
	var issues []gitlabIssue
	require.NoError(t, decoder.Decode(&issues))
	require.NotNil(t, issues)
	return issues
}

// What the host's documentation demands of every issue.
func TestGitLabIssuesAreComplete(t *testing.T) {
	for name, b := range batches() {
		seen := map[string]bool{}
		for _, i := range decodedGitLab(t, b) {
			require.NotEmpty(t, i.Description, name)
			require.NotEmpty(t, i.Check, name)
			require.False(t, seen[i.Fingerprint], name)
			seen[i.Fingerprint] = true
			require.Contains(t, []string{"info", "minor", "major", "critical", "blocker"}, i.Severity)
			require.NotRegexp(t, `^\.?/`, i.Location.Path)
			require.Positive(t, i.Location.Lines.Begin)
		}
		if name != "none" {
			require.Len(t, seen, strings.Count(written(t, "lines", b), "\n"), name)
		}
	}
}

func TestGitLabSeverities(t *testing.T) {
	severities := map[string]string{}
	for _, i := range decodedGitLab(t, batches()["outcomes"]) {
		severities[i.Check] = i.Severity
	}
	require.Equal(t, map[string]string{
		"harbor-county:intake-exhaust-distance": "major", "model-code:house-pressure": "major", "model-code:working-space": "major",
		"model-code:flows-balanced": "minor", "model-code:terminal-loss": "info", "model-code:combination-fitting": "info",
	}, severities)
	require.Equal(t, "blocker", decodedGitLab(t, batches()["invalid"])[0].Severity)
	require.Equal(t, "blocker", decodedGitLab(t, batches()["nothing"])[0].Severity)
	require.Equal(t, "info", decodedGitLab(t, batches()["variances"])[2].Severity)
}

// The host closes and opens issues by fingerprint.
func TestGitLabFingerprintsKeepWhenLinesMove(t *testing.T) {
	r := failedSeparation()
	before := decodedGitLab(t, batch(report("a.vent.toml", r, r)))
	require.NotEqual(t, before[0].Fingerprint, before[1].Fingerprint)
	r.Position.Line = 99
	after := decodedGitLab(t, batch(report("a.vent.toml", r, r)))
	require.Equal(t, before[0].Fingerprint, after[0].Fingerprint)
	elsewhere := decodedGitLab(t, batch(report("b.vent.toml", r)))
	require.NotEqual(t, before[0].Fingerprint, elsewhere[0].Fingerprint)
}
