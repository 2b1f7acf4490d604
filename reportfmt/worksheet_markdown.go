package reportfmt

import (
	"fmt"
	"io"
	"strings"

	"github.com/ventlint/ventlint/checker"
)

// WriteWorksheetMarkdown writes a worksheet as CommonMark with a table for each
// subject. The only error is one of the writer.
func WriteWorksheetMarkdown(w io.Writer, s *checker.Worksheet) error {
	n := notice{}
	n.block("# Worksheet")
	n.block("- Project: "+visibleMarkdown(s.Design.Project.Name), "- Design file: "+markdownCode(oneLine(s.File)))
	for _, section := range s.Sections {
		n.block("## " + visibleMarkdown(section.Title))
		rows := []string{"| Value | Formula | With | Result | Source |", "| --- | --- | --- | --- | --- |"}
		for _, line := range section.Lines {
			rows = append(rows, "| "+strings.Join(each(worksheetCells(line), visibleMarkdown), " | ")+" |")
		}
		n.block(rows...)
	}
	n.list("Assumptions", assumedLead, each(s.Assumptions, assumedText))
	n.block("_" + closing + "_")
	_, err := io.WriteString(w, n.out.String())
	return err
}

// worksheetCells are what a row says of one computed value.
func worksheetCells(l checker.WorkedLine) []string {
	inputs := each(l.Inputs, func(in checker.WorkedInput) string { return fmt.Sprintf("%s = %s%s", in.Name, in.Value, source(in)) })
	result := l.Value
	switch {
	case len(l.Missing) > 0:
		result = "missing: " + enumerated(missingNames(l.Missing))
	case l.Trouble != "":
		result = "not computed: " + l.Trouble
	}
	remarks := joined("; ", l.Source, prefixed("taken: ", l.Taken), prefixed("note: ", l.Note))
	return []string{joined(", ", l.Name, l.Of), l.Formula, strings.Join(inputs, "; "), result, remarks}
}

// prefixed is a text after what it is; nothing where there is none.
func prefixed(what, text string) string {
	if text == "" {
		return ""
	}
	return what + text
}

func visibleMarkdown(text string) string { return markdownText(oneLine(text)) }
