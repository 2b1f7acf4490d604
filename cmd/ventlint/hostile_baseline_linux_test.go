package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// many is a JSON list of n times the same.
func many(n int, element string) string {
	return "[" + strings.TrimSuffix(strings.Repeat(element+",", n), ",") + "]"
}

const (
	reports = `{"format": "ventlint-report", "version": 1, "reports": `
	runs    = `{"runs": [{"tool": {"driver": {"name": "ventlint"}}, "results": `
	address = `[{"partialFingerprints": {"ventlintSubject/v1": "0"}, "locations": [{"physicalLocation": {"artifactLocation": {"uri": "%"}}}]}]`
)

// hostileBaselines are reports of at most 1 MiB, each with a part of what is told of it;
// empty: it is read, and nothing in it is of the design.
var hostileBaselines = map[string][2]string{
	"nothing":            {"", "unexpected end of JSON input"},
	"zeros":              {strings.Repeat("\x00", 1<<20), "line 1: invalid character"},
	"depth":              {strings.Repeat("[", 1<<20), "expected a report of ventlint"},
	"depth in a report":  {reports + strings.Repeat("[", 1_000_000), "expected a report of ventlint"},
	"depth in a result":  {reports + `[{"results": [` + strings.Repeat("[", 1_000_000), "exceeded max depth"},
	"depth in a key":     {`{"x": ` + strings.Repeat("[", 1_000_000), "unexpected end of JSON input"},
	"many reports":       {reports + many(340_000, "{}") + "}", ""},
	"many results":       {reports + `[{"results": ` + many(340_000, "{}") + "}]}", `result 1 of "" has no fingerprint`},
	"many sound results": {reports + `[{"results": ` + many(27_000, `{"fingerprint":"0","outcome":"fail"}`) + "}]}", ""},
	"many runs":          {`{"runs": ` + many(340_000, "{}") + "}", "expected a report of ventlint"},
	"many results, runs": {runs + many(340_000, "{}") + "}]}", "result 1 has no fingerprint"},
	"a long outcome":     {reports + `[{"results": [{"fingerprint": "0", "outcome": "` + strings.Repeat("A", 1_000_000) + `"}]}]}`, `has the outcome "AAA`},
	"a long name":        {reports + `[{"file": "` + strings.Repeat("A", 1_000_000) + `", "results": [{}]}]}`, "has no fingerprint"},
	"a long number":      {reports + `[{"results": [{"position": {"line": ` + strings.Repeat("9", 1_000_000) + `}}]}]}`, `"position/line" is a number 999`},
	"a long address":     {runs + strings.Replace(address, "%", "%"+strings.Repeat("z", 1_000_000), 1) + "}]}", `has the address "%zzz`},
	"a command":          {reports + `[{"file": "a\n::error::x\u001b[2J", "results": [{}]}]}`, `"a\n::error::x\x1b[2J"`},
}

// A hostile report to compare with ends so as well, and what is wrong with it is told
// in a few words that steer nothing.
func TestHostileBaselines(t *testing.T) {
	design := filepath.Join(t.TempDir(), "house.vent.toml")
	require.NoError(t, os.WriteFile(design, []byte(lot), 0o644))
	for name, c := range hostileBaselines {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "baseline.json")
			require.NoError(t, os.WriteFile(path, []byte(c[0]), 0o644))
			withinBounds(t, name, "review", "--baseline", path, design)
			told := complaint(t, "review", "--baseline", path, design)
			require.Equal(t, c[1] == "", told == "", told)
			assert.Contains(t, told, c[1])
			assert.Less(t, len(told), 1000)
			assert.NotContains(t, told, "\x1b")
			assert.NotContains(t, told, "\n::")
		})
	}
}

// What is larger than any part is refused unread; a report may have any size, and is
// read until a mistake in it.
func TestGiantReports(t *testing.T) {
	folder := t.TempDir()
	design, path := filepath.Join(folder, "house.vent.toml"), filepath.Join(folder, "baseline.json")
	require.NoError(t, os.WriteFile(design, []byte(lot), 0o644))
	require.NoError(t, os.WriteFile(path, nil, 0o644))
	require.NoError(t, os.Truncate(path, largestPart+1))
	for told, args := range map[string][]string{
		"near line 1: invalid character":         {"review", "--baseline", path, design},
		"larger than 256 MiB, expected a report": {"impact", "--merge", path},
	} {
		withinBounds(t, "a giant report", args...)
		assert.Contains(t, complaint(t, args...), told)
	}
}

// complaint is what the program tells where it could not do its work.
func complaint(t *testing.T, args ...string) string {
	t.Helper()
	c := exec.CommandContext(t.Context(), "ventlint", args...)
	var stderr bytes.Buffer
	c.Stderr = &stderr
	if exitCode(t, c.Run()) == couldNot {
		require.NotEmpty(t, stderr.String())
	}
	return stderr.String()
}
