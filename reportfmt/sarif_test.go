package reportfmt

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

func decodedSARIF(t *testing.T, b Batch) sarifRun {
	t.Helper()
	decoder := json.NewDecoder(strings.NewReader(written(t, "sarif", b)))
	decoder.DisallowUnknownFields()
	var l sarifLog
	require.NoError(t, decoder.Decode(&l))
	require.Equal(t, "2.1.0", l.Version)
	require.Len(t, l.Runs, 1)
	return l.Runs[0]
}

// Section 3.14.23 of SARIF 2.1.0: null results mean that nothing was run.
func TestSARIFResultsAreEmptyNotNullWhenClean(t *testing.T) {
	require.Contains(t, written(t, "sarif", batches()["clean"]), `"results": []`)
	run := decodedSARIF(t, batches()["clean"])
	require.True(t, run.Invocations[0].ExecutionSuccessful)
	require.Empty(t, run.Invocations[0].Notifications)
}

// What hosts need to be filled, by the documentation of one of them.
func TestSARIFHasWhatHostsNeed(t *testing.T) {
	for name, b := range batches() {
		run := decodedSARIF(t, b)
		require.Equal(t, "ventlint", run.Tool.Driver.Name, name)
		require.Equal(t, "unicodeCodePoints", run.ColumnKind, name)
		for _, rule := range run.Tool.Driver.Rules {
			requireRule(t, rule)
		}
		for _, result := range run.Results {
			requireResult(t, result, run.Tool.Driver.Rules)
		}
	}
}

func requireRule(t *testing.T, r sarifRule) {
	t.Helper()
	require.NotEmpty(t, r.ID)
	require.NotEmpty(t, r.Help.Text)
	require.NotEmpty(t, r.Help.Markdown)
	require.NotEmpty(t, r.Short.Text)
	require.NotEmpty(t, r.Full.Text)
	require.LessOrEqual(t, len([]rune(r.Short.Text)), 1024)
	require.LessOrEqual(t, len([]rune(r.Full.Text)), 1024)
	require.Contains(t, r.Help.Text, "Basis: ")
	require.Contains(t, r.Help.Text, closing)
	require.True(t, slices.IsSorted(r.Properties.Tags))
	require.Len(t, r.Properties.Tags, 2)
}

func requireResult(t *testing.T, r sarifResult, list []sarifRule) {
	t.Helper()
	require.Equal(t, list[r.RuleIndex].ID, r.RuleID)
	require.Contains(t, []string{"error", "warning", "note"}, r.Level)
	require.True(t, strings.HasSuffix(r.Message.Text, confirm))
	require.Len(t, r.Locations, 1)
	require.Regexp(t, "^[0-9a-f]{32}$", r.Fingerprints.Subject)
	for _, l := range append(r.Locations, r.Related...) {
		at := l.Physical.Region
		require.Equal(t, at.StartLine, at.EndLine)
		require.Positive(t, at.StartLine)
		require.Positive(t, at.StartColumn)
		require.GreaterOrEqual(t, at.EndColumn, at.StartColumn)
		require.Equal(t, "%SRCROOT%", l.Physical.Artifact.URIBaseID)
		require.NotRegexp(t, `^/|\\|^[a-z]+:`, l.Physical.Artifact.URI)
	}
}

func TestSARIFHoldsProblemsOnly(t *testing.T) {
	run := decodedSARIF(t, batches()["outcomes"])
	levels := map[string]string{}
	for _, r := range run.Results {
		levels[r.RuleID] = r.Level
	}
	require.Equal(t, map[string]string{
		"harbor-county:intake-exhaust-distance": "error",
		"model-code:combination-fitting":        "note", // a person must judge
		"model-code:working-space":              "error",
		"model-code:flows-balanced":             "warning",
		"model-code:terminal-loss":              "note",
		"model-code:house-pressure":             "error",
	}, levels)
	require.Len(t, run.Results, 6) // the accepted one is left out
	require.Len(t, run.Tool.Driver.Rules, 6)
}

func TestSARIFMessageOfAMissingInputSaysSoFirst(t *testing.T) {
	run := decodedSARIF(t, batch(report("a.vent.toml", openAccess())))
	require.Regexp(t, `^input missing \(ventilator\.erv-1\.access\.working_depth, `, run.Results[0].Message.Text)
	require.Len(t, run.Results[0].Related, 2)
}

// Section 3.11.6: a link with a number leads to the one location with that id.
func TestSARIFLinksLeadToRelatedLocations(t *testing.T) {
	r := failedSeparation()
	for i := range 2 * mostRelated {
		r.Inputs = append(r.Inputs, checker.Input{Key: fmt.Sprintf("duct[%d].length", i), Position: at(i+1, 1, 2)})
	}
	got := decodedSARIF(t, batch(report("a.vent.toml", r))).Results[0]
	links := regexp.MustCompile(`\[(?:[^\[\]\\]|\\.)+\]\((\d+)\)`).FindAllStringSubmatch(got.Message.Text, -1)
	require.Len(t, links, mostRelated)
	for i, l := range got.Related {
		require.Equal(t, i+1, l.ID)
		require.Equal(t, fmt.Sprint(l.ID), links[i][1])
	}
	require.Contains(t, got.Message.Text, `[duct\[0\].length](4)`)
}

// Sections 3.11.5 and 3.11.6: names of the design become neither placeholders
// nor links.
func TestSARIFTextsOfTheDesignStayTexts(t *testing.T) {
	message := decodedSARIF(t, batches()["odd"]).Results[0].Message.Text
	require.NotContains(t, message, "](https")
	require.Contains(t, message, "{{0}}")
}

func TestSARIFFilesNotReviewedAreNotifications(t *testing.T) {
	run := decodedSARIF(t, batches()["invalid"])
	require.Empty(t, run.Results)
	require.False(t, run.Invocations[0].ExecutionSuccessful)
	notes := run.Invocations[0].Notifications
	require.Len(t, notes, 3)
	require.Equal(t, 12, notes[0].Locations[0].Physical.Region.StartLine)
	require.Nil(t, notes[2].Locations[0].Physical.Region) // about the whole file
	require.False(t, decodedSARIF(t, batches()["nothing"]).Invocations[0].ExecutionSuccessful)
}

func TestSARIFAddresses(t *testing.T) {
	for file, want := range map[string]sarifArtifact{
		"designs/a.vent.toml":     {URI: "designs/a.vent.toml", URIBaseID: "%SRCROOT%"},
		"./designs/a.vent.toml":   {URI: "designs/a.vent.toml", URIBaseID: "%SRCROOT%"},
		"a b/100%#?.vent.toml":    {URI: "a%20b/100%25%23%3F.vent.toml", URIBaseID: "%SRCROOT%"},
		"lot:12.vent.toml":        {URI: "./lot:12.vent.toml", URIBaseID: "%SRCROOT%"},
		"\u00e9t\u00e9.vent.toml": {URI: "%C3%A9t%C3%A9.vent.toml", URIBaseID: "%SRCROOT%"},
		"/srv/a.vent.toml":        {URI: "file:///srv/a.vent.toml"},
		"C:/plans/a.vent.toml":    {URI: "file:///C:/plans/a.vent.toml"},
	} {
		require.Equal(t, want, sarifArtifactOf(file), file)
	}
}

func TestSARIFLongDescriptionsAreCut(t *testing.T) {
	r := failedSeparation()
	r.Rule.Title = long(3000)
	run := decodedSARIF(t, batch(report("a.vent.toml", r)))
	requireRule(t, run.Tool.Driver.Rules[0])
	require.True(t, strings.HasSuffix(run.Tool.Driver.Rules[0].Short.Text, "…"))
}

func TestSARIFVersionsBeginWithANumber(t *testing.T) {
	for version, want := range map[string]string{"v0.1.0": "0.1.0", "1.2": "1.2", "(devel)": "", "": "", "v": ""} {
		require.Equal(t, want, sarifVersion(version))
	}
}

func TestRuleHelpTellsWhatIsLeftToAPerson(t *testing.T) {
	for _, c := range []struct {
		rule rules.Rule
		want string
	}{
		{rules.Rule{Judge: true}, "Left to a person: what does not meet this rule is for a person to judge, and does not fail"},
		{rules.Rule{JudgeWhen: `unit.kind == "erv"`}, `Left to a person: what does not meet this rule is for a person to judge where unit.kind == "erv"`},
	} {
		r := &checker.Result{Rule: &c.rule}
		require.Contains(t, helpText(r), c.want)
		require.Contains(t, helpMarkdown(r), "Left to a person: ")
	}
	require.NotContains(t, helpText(&checker.Result{Rule: &rules.Rule{}}), "Left to a person")
}
