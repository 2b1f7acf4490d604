package reportfmt

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
)

// sheet has one line of each sort, with texts that mean something to a format.
func sheet() *checker.Worksheet {
	return &checker.Worksheet{File: "odd`name.vent.toml", Design: &design.Design{Project: &design.Project{Name: "House | <b>"}},
		Sections: []checker.WorkedSection{{Title: "Rates", Lines: []checker.WorkedLine{
			{Name: "rate", Of: `unit "a"`, Formula: "A * b_c", Value: "50 cfm", Taken: "n = 0.65", Note: "on the curve", Source: "a [book]",
				Inputs: []checker.WorkedInput{{Name: "A", Value: "2 ft2", Key: "dwelling.floor_area", Position: document.Position{Line: 3, Column: 7}}, {Name: "b", Value: "1\n2"}}},
			{Name: "open", Missing: []checker.MissingInput{{Key: "dwelling.height", Position: document.Position{Line: 9, Column: 1}}}},
			{Name: "stuck", Trouble: "no curve\u202e"},
		}}},
		Assumptions: []checker.Taken{{Text: "n = 0.65", Lines: []string{"rate", "other"}}}}
}

func printedSheet(t *testing.T, write func(b *strings.Builder) error) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, write(&b))
	return b.String()
}

func TestWorksheetAsText(t *testing.T) {
	text := printedSheet(t, func(b *strings.Builder) error { return WriteWorksheet(b, sheet(), Options{}) })
	for _, want := range []string{
		"A = 2 ft2 (line 3, dwelling.floor_area)", "b = 1 2 (computed)", "Result       50 cfm", "Taken        n = 0.65", "Note         on the curve",
		"Missing      dwelling.height (line 9)", "Not computed no curve", "ASSUMPTIONS", "*  n = 0.65: rate; other", closing[:40],
	} {
		require.Contains(t, text, want)
	}
}

func TestWorksheetAsMarkdown(t *testing.T) {
	text := printedSheet(t, func(b *strings.Builder) error { return WriteWorksheetMarkdown(b, sheet()) })
	require.Contains(t, text, "- Project: House \\| \\<b\\>\n- Design file: ``odd`name.vent.toml``\n")
	require.Contains(t, text, `| rate, unit "a" | A \* b\_c | A = 2 ft2 (line 3, dwelling.floor\_area); b = 1 2 (computed) | 50 cfm | a \[book\]; taken: n = 0.65; note: on the curve |`)
	require.Contains(t, text, "| open |  |  | missing: dwelling.height (line 9) |  |")
	require.Contains(t, text, "- n = 0.65: rate; other")
	require.NotContains(t, text, "\u202e")
	for _, line := range strings.Split(text, "\n") {
		if strings.HasPrefix(line, "|") {
			require.Equal(t, 6, strings.Count(strings.ReplaceAll(line, `\|`, ""), "|"), line)
		}
	}
}

// All that the worksheet holds is in its JSON.
func TestWorksheetAsJSON(t *testing.T) {
	text := printedSheet(t, func(b *strings.Builder) error { return WriteWorksheetJSON(b, sheet()) })
	var got jsonWorksheet
	require.NoError(t, json.Unmarshal([]byte(text), &got))
	require.Equal(t, "ventlint-worksheet", got.Format)
	require.Equal(t, 1, got.Version)
	lines := got.Sections[0].Lines
	require.Equal(t, jsonWorksheetLine{Name: "rate", Of: `unit "a"`, Formula: "A * b_c", Value: "50 cfm", Taken: "n = 0.65", Note: "on the curve", Source: "a [book]",
		Inputs: []jsonWorksheetInput{{"A", "2 ft2", "dwelling.floor_area", 3, 7}, {Name: "b", Value: lines[0].Inputs[1].Value}}}, lines[0])
	require.Equal(t, []jsonWorksheetAbsent{{"dwelling.height", 9}}, lines[1].Missing)
	require.NotContains(t, lines[2].Trouble, "\u202e")
	require.Equal(t, []jsonTaken{{"n = 0.65", []string{"rate", "other"}}}, got.Assumptions)
}
