package reportfmt

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
)

// command is how a build host reads a line: the name up to a blank, values by
// name up to two colons, then the text.
var command = regexp.MustCompile(`^::(error|warning|notice) ((?:[a-z]+=[^:,]+,?)+)::(.*)$`)

func annotationLines(t *testing.T, b Batch) []string {
	t.Helper()
	return strings.Split(strings.TrimSuffix(written(t, "annotations", b), "\n"), "\n")
}

func TestAnnotationsHaveOneShape(t *testing.T) {
	for name, b := range batches() {
		for _, l := range annotationLines(t, b) {
			if name == "clean" {
				require.Empty(t, l)
				continue
			}
			require.Regexp(t, command, l, name)
		}
	}
}

func TestAnnotationsSayWhatLinesSay(t *testing.T) {
	for name, b := range batches() {
		if name != "none" {
			require.Equal(t, strings.Count(written(t, "lines", b), "\n"), strings.Count(written(t, "annotations", b), "\n"), name)
		}
	}
}

func TestAnnotationsPutErrorsFirst(t *testing.T) {
	var got []string
	for _, l := range annotationLines(t, batches()["outcomes"]) {
		got = append(got, command.FindStringSubmatch(l)[1])
	}
	require.Equal(t, []string{"error", "error", "error", "warning", "notice", "notice"}, got)
}

func TestAnnotationsAreCapped(t *testing.T) {
	var many []checker.Result
	for i := range 13 {
		e, w := failedSeparation(), advisedFlow()
		e.Position.Line, w.Position.Line = 100+i, 200+i
		many = append(many, e, w)
	}
	many = append(many, notedLabel())
	lines := annotationLines(t, batch(report("a.vent.toml", many...)))
	require.Len(t, lines, 22)
	require.Contains(t, lines[0], "line=100,")
	require.Contains(t, lines[9], "line=109,")
	require.Contains(t, lines[10], "::warning file=a.vent.toml,line=200,")
	require.Contains(t, lines[20], "::notice ")
	require.Equal(t, "3 more errors and 3 more warnings in the other reports", lines[21])
}

// No text of a design ends its command, adds a value, or begins a command.
func TestAnnotationsEscape(t *testing.T) {
	r := failedSeparation()
	r.Message = "100 %\r\n::error::x"
	r.Comparisons = nil
	r.Rule.ID = "a,b:c"
	got := annotationLines(t, batch(report("lots/a,b:c%.vent.toml", r)))
	require.Equal(t, []string{"::error file=lots/a%2Cb%3Ac%25.vent.toml,line=41,col=13,title=harbor-county%3Aa%2Cb%3Ac::100 %25 ::error::x"}, got)
	require.Equal(t, "%25 b", commandText("%\nb"))
}

func TestAnnotationNamesFilesFromTheRoot(t *testing.T) {
	for file, want := range map[string]string{"./a.vent.toml": "a.vent.toml", "b//a.vent.toml": "b/a.vent.toml"} {
		got := annotationLines(t, batch(report(file, failedSeparation())))[0]
		require.Contains(t, got, fmt.Sprintf("::error file=%s,line=", want))
	}
}

// Whatever a design calls its things, no report but this one begins a line with
// what a build host takes for a command.
func TestNoOtherFormatGivesCommands(t *testing.T) {
	b := batches()["hostile"]
	r := &b.Reports[0].Results[0]
	r.Message = strings.Repeat("::error::x ", 40) + strings.Repeat(":", 400)
	b.Reports[0].File = "::error::y.vent.toml"
	b.Reports[0].Design.Project.Name = "::error::z"
	b.Failures = []Failure{{File: "::error::b.vent.toml"}}
	for _, format := range Names() {
		if format == "annotations" {
			continue
		}
		for _, line := range strings.Split(written(t, format, b), "\n") {
			require.False(t, strings.HasPrefix(strings.TrimSpace(line), "::"), "%s: %s", format, line)
		}
	}
	b.Options.Width = leastWidth
	for _, line := range strings.Split(written(t, "text", b), "\n") {
		require.False(t, strings.HasPrefix(strings.TrimSpace(line), "::"), line)
		require.LessOrEqual(t, columns(line), leastWidth)
	}
}
