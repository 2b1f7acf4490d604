package reportfmt

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
)

// namedSheet is a worksheet in which a text of a design stands wherever one can.
func namedSheet(s string) *checker.Worksheet {
	at := document.Position{Line: 3, Column: 7}
	return &checker.Worksheet{File: s, Design: &design.Design{Project: &design.Project{Name: s}},
		Sections: []checker.WorkedSection{{Title: s, Lines: []checker.WorkedLine{
			{Name: s, Of: s, Formula: "A * b", Value: s, Taken: s, Note: s, Source: s,
				Inputs: []checker.WorkedInput{{Name: s, Value: s, Key: s, Position: at}, {Name: s, Value: s}}},
			{Name: s, Missing: []checker.MissingInput{{Key: s, Position: at}}},
			{Name: s, Of: s, Trouble: s},
		}}},
		Assumptions: []checker.Taken{{Text: s, Lines: []string{s, s}}}}
}

// sheetForms are the forms of a worksheet, by the report whose shape they have.
var sheetForms = map[string]func(*strings.Builder, *checker.Worksheet) error{
	"text": func(b *strings.Builder, s *checker.Worksheet) error {
		return WriteWorksheet(b, s, Options{Width: unwrapped})
	},
	"markdown": func(b *strings.Builder, s *checker.Worksheet) error { return WriteWorksheetMarkdown(b, s) },
	"json":     func(b *strings.Builder, s *checker.Worksheet) error { return WriteWorksheetJSON(b, s) },
}

// FuzzWorksheetNames: neither does a name change the shape of a worksheet, in which
// each row of a table has as many cells as its head.
func FuzzWorksheetNames(f *testing.F) {
	for _, s := range hostileTexts {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if strings.TrimSpace(Visible(s)) == "" || len(s) > 200 {
			return // as for reports
		}
		for form, write := range sheetForms {
			plain := printedSheet(t, func(b *strings.Builder) error { return write(b, namedSheet("fresh")) })
			got := printedSheet(t, func(b *strings.Builder) error { return write(b, namedSheet(s)) })
			requireHarmless(t, strings.ReplaceAll(got, "\t", ""), form)
			sameShape(t, form, plain, got)
			if form == "markdown" {
				require.Equal(t, barsOf(plain), barsOf(got))
			}
		}
	})
}

// barsOf counts, for each row of a table, the bars that part cells.
func barsOf(markdown string) []int {
	var bars []int
	for _, line := range strings.Split(markdown, "\n") {
		if strings.HasPrefix(line, "|") {
			line = strings.ReplaceAll(line, `\\`, "")
			bars = append(bars, strings.Count(line, "|")-strings.Count(line, `\|`))
		}
	}
	return bars
}
