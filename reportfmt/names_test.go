package reportfmt

import (
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
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
	b.Failures = []Failure{{File: "designs/other.vent.toml", Problems: []document.Problem{{Position: at(1, 1, 2), Path: "x", Message: s, Hint: s}}}}
	return b
}

// FuzzNames: whatever a design calls its things, a report has the shape that it has
// for plain names. No name adds a line, a tag, a cell, a command or a formula.
func FuzzNames(f *testing.F) {
	for _, s := range []string{"fresh", "<script>alert(1)</script>", "</style><img src=x onerror=alert(1)>", "=cmd|' /C calc'!A0", "@SUM(1)", "\x1b[2J\x1b]0;x\a",
		"::error file=a,line=1::x", "a\n::warning::b", "a\r\nb", "| a | b |", "```\n# x", "[x](javascript:alert(1))", "]]>", "&lt;", "\"',;", "\u202e", "\x00", "%0A::error::", "\ufeff=1", " =1", "\t=1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if strings.TrimSpace(Visible(s)) == "" || len(s) > 200 {
			return // a part without a text may be left out, and a long one wrapped
		}
		b := named(s)
		for _, format := range []string{"html", "lines", "csv", "annotations", "junit", "json", "sarif", "gitlab", "markdown"} {
			got := written(t, format, b)
			requireHarmless(t, strings.ReplaceAll(got, "\t", ""), format)
			sameShape(t, format, plainReport(t, format), got)
		}
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

// sameShape compares a report with that of plain names.
func sameShape(t *testing.T, format, plain, got string) {
	t.Helper()
	switch format {
	case "html":
		require.Equal(t, strings.Count(plain, "<"), strings.Count(got, "<"), "tags")
	case "lines", "annotations":
		require.Equal(t, strings.Count(plain, "\n"), strings.Count(got, "\n"), "lines of %s", format)
		require.Equal(t, commandLines(plain), commandLines(got), "commands of %s", format)
	case "csv":
		sameCells(t, plain, got)
	case "junit":
		require.Equal(t, elements(t, plain), elements(t, got))
	case "json", "sarif", "gitlab":
		require.True(t, json.Valid([]byte(got)), format)
	}
}

func commandLines(s string) int {
	n := 0
	for _, line := range strings.Split(s, "\n") {
		if strings.HasPrefix(line, "::") {
			n++
		}
	}
	return n
}

func sameCells(t *testing.T, plain, got string) {
	t.Helper()
	want, err := csv.NewReader(strings.NewReader(plain)).ReadAll()
	require.NoError(t, err)
	rows, err := csv.NewReader(strings.NewReader(got)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, len(want))
	for _, row := range rows {
		for _, cell := range row {
			require.False(t, strings.HasPrefix(cell, "=") || strings.HasPrefix(cell, "+") || strings.HasPrefix(cell, "-") || strings.HasPrefix(cell, "@"), "a spreadsheet computes %q", cell)
		}
	}
}

// elements counts those of an XML document.
func elements(t *testing.T, s string) int {
	t.Helper()
	reader, n := xml.NewDecoder(strings.NewReader(s)), 0
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			return n
		}
		require.NoError(t, err)
		if _, ok := token.(xml.StartElement); ok {
			n++
		}
	}
}
