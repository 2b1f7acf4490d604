package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden files anew")

const (
	designs  = "testdata/designs"
	houseIP  = designs + "/ok/alder-court.vent.toml"
	houseSI  = designs + "/ok/alder-court-si.vent.toml"
	faults   = designs + "/faults/alder-court-faults.vent.toml"
	earlyOne = designs + "/concept/early-idea.vent.toml"
	withGaps = designs + "/incomplete/permit-missing-inputs.vent.toml"
)

// ran is what one run of the program gave.
type ran struct {
	code           int
	stdout, stderr string
}

// root is that of the repository: tests begin in the folder of their package.
var root, _ = filepath.Abs(filepath.Join("..", ".."))

// atRoot runs the program in the root of the repository.
func atRoot(t *testing.T, args ...string) ran {
	t.Helper()
	t.Chdir(root)
	var stdout, stderr bytes.Buffer
	code := run(args, machine{
		stdin: strings.NewReader(""), stdout: &stdout, stderr: &stderr,
		getenv: func(string) string { return "" },
		now:    func() time.Time { return time.Date(2026, 3, 31, 12, 0, 0, 0, time.UTC) },
	})
	return ran{code, stdout.String(), stderr.String()}
}

func reviewAs(t *testing.T, format, path string) ran {
	t.Helper()
	return atRoot(t, "review", "--date", "2026-03-31", "--format", format, path)
}

// golden compares with a file beside the design, whose name ends in .FORMAT.out.
func golden(t *testing.T, design, format, got string) {
	t.Helper()
	path := strings.TrimSuffix(design, designSuffix) + "." + format + ".out"
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), got)
}

func TestSoundDesignsReviewClean(t *testing.T) {
	for _, name := range []string{"alder-court", "alder-court-si", "quarry-lane-apartment", "attic-hung"} {
		t.Run(name, func(t *testing.T) {
			got := reviewAs(t, "lines", designs+"/ok/"+name+designSuffix)
			assert.Equal(t, ran{code: clean}, got)
		})
	}
}

func TestEveryRuleOfMostPassesSomewhere(t *testing.T) {
	got := reviewAs(t, "json", designs+"/ok")
	require.Equal(t, clean, got.code)
	passed, all := map[string]bool{}, map[string]bool{}
	for _, r := range results(t, got.stdout) {
		all[r.Rule] = true
		if r.Outcome == "pass" {
			passed[r.Rule] = true
		}
	}
	assert.GreaterOrEqual(t, float64(len(passed)), 0.85*float64(len(all)), "rules that a sound design passes, of all")
}

func TestReportsOfDesigns(t *testing.T) {
	for _, c := range []struct {
		design, format string
		code           int
	}{
		{faults, "lines", found},
		{faults, "text", found},
		{earlyOne, "text", clean},
		{withGaps, "lines", found},
	} {
		t.Run(filepath.Base(c.design)+" "+c.format, func(t *testing.T) {
			got := reviewAs(t, c.format, c.design)
			assert.Equal(t, c.code, got.code)
			assert.Empty(t, got.stderr)
			golden(t, c.design, c.format, got.stdout)
		})
	}
}

// judged is one result of a review, as json reports it.
type judged struct {
	Rule     string `json:"rule"`
	Outcome  string `json:"outcome"`
	Level    string `json:"level"`
	Topic    string `json:"topic"`
	Subjects []struct {
		Label string `json:"label"`
	} `json:"subjects"`
	Position struct {
		Line int `json:"line"`
	} `json:"position"`
}

// about is the rule and its subjects.
func (j judged) about() string {
	text := j.Rule
	for _, s := range j.Subjects {
		text += " " + s.Label
	}
	return text
}

// results lists the results of all reports.
func results(t *testing.T, report string) []judged {
	t.Helper()
	var document struct {
		Reports []struct {
			Results []judged `json:"results"`
		} `json:"reports"`
	}
	require.NoError(t, json.Unmarshal([]byte(report), &document))
	var all []judged
	for _, r := range document.Reports {
		all = append(all, r.Results...)
	}
	require.NotEmpty(t, all)
	return all
}

func TestGapsLeaveRulesOpen(t *testing.T) {
	counts := map[string]int{}
	for _, r := range results(t, reviewAs(t, "json", withGaps).stdout) {
		counts[r.Outcome]++
	}
	assert.Zero(t, counts["fail"], "what the design gives is sound")
	assert.Greater(t, counts["open"], counts["pass"])
}

func TestEarlyIdeaIsAskedLittle(t *testing.T) {
	counts := map[string]int{}
	for _, r := range results(t, reviewAs(t, "json", earlyOne).stdout) {
		counts[r.Outcome]++
	}
	assert.Positive(t, counts["pass"])
	assert.Positive(t, counts["open"])
	assert.Greater(t, counts["notDue"], 100)
}
