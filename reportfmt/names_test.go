package reportfmt

import (
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document"
)

// named is a batch in which a text of a design or a pack stands wherever one can.
func named(s string) Batch {
	r := everyOutcome()
	r.Design.Project.Name, r.Design.Project.Site = s, text(s)
	r.Packs[0].Title = s
	for i := range r.Results {
		result := &r.Results[i]
		result.Message, result.Reasons, result.Stated = s, []string{s}, []string{s}
		for k := range result.Subjects {
			result.Subjects[k].Label, result.Subjects[k].ID = s, s
		}
		for k := range result.Missing {
			result.Missing[k].Key = s
		}
		for k := range result.Comparisons {
			result.Comparisons[k].Found, result.Comparisons[k].Of = s, s
		}
	}
	b := batch(r)
	b.Options.Width = unwrapped
	b.Failures = []Failure{{File: "designs/other.vent.toml", Problems: []document.Problem{{Position: at(1, 1, 2), Path: "x", Message: s, Hint: s}}}}
	return b
}

// unwrapped is wider than any text of a report, so that lines can be counted.
const unwrapped = 20_000

// hostileTexts mean something to a format, a terminal, a spreadsheet or a build host.
var hostileTexts = []string{"fresh", "<script>alert(1)</script>", "</style><img src=x onerror=alert(1)>", "=cmd|' /C calc'!A0", "@SUM(1)", "\x1b[2J\x1b]0;x\a",
	"::error file=a,line=1::x", "a\n::warning::b", "a\r\nb", "| a | b |", "```\n# x", "[x](javascript:alert(1))", "]]>", "&lt;", "\"',;", "\u202e", "\x00", "%0A::error::", "\ufeff=1", " =1", "\t=1",
	"{0} {{x}}", "a\\", "- x\n\n1. y", "## x", "*  x: y"}

// FuzzNames: whatever a design calls its things, a report has the shape that it has
// for plain names. No name adds a line, a tag, a cell, a command or a formula.
func FuzzNames(f *testing.F) {
	for _, s := range hostileTexts {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if strings.TrimSpace(Visible(s)) == "" || len(s) > 200 {
			return // a part without a text may be left out, and a long one shortened
		}
		b := named(s)
		for _, format := range Names() {
			got := written(t, format, b)
			requireHarmless(t, strings.ReplaceAll(got, "\t", ""), format)
			sameShape(t, format, plainReport(t, format), got)
		}
		requirePlainOnTerminals(t, b)
	})
}

var plainReports sync.Map // by format

// plainReport is the report of plain names, written once.
func plainReport(t *testing.T, format string) string {
	if known, ok := plainReports.Load(format); ok {
		return known.(string)
	}
	report := written(t, format, named("fresh"))
	plainReports.Store(format, report)
	return report
}

// requirePlainOnTerminals: also where a notice is wrapped and coloured, a text adds
// no command of a build host, and no sequence that steers a terminal.
func requirePlainOnTerminals(t *testing.T, b Batch) {
	t.Helper()
	b.Options = Options{}
	wrapped := written(t, "text", b)
	require.Zero(t, commandLines(wrapped))
	b.Options.Color = true
	coloured := written(t, "text", b)
	require.Contains(t, coloured, "\x1b[")
	require.Equal(t, wrapped, colours.ReplaceAllString(coloured, ""))
}

var colours = regexp.MustCompile(`\x1b\[\d+(;\d+)*m`)
