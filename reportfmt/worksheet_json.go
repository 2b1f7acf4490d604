package reportfmt

import (
	"io"

	"github.com/ventlint/ventlint/checker"
)

// A worksheet as JSON: format "ventlint-worksheet", version 1. Values are printed
// in the units of the design. A later version only adds keys.
type (
	jsonWorksheet struct {
		Format      string                 `json:"format"`
		Version     int                    `json:"version"`
		Note        string                 `json:"note"` // what the worksheet is worth
		File        string                 `json:"file"`
		Project     string                 `json:"project"`
		Sections    []jsonWorksheetSection `json:"sections"`
		Assumptions []jsonTaken            `json:"assumptions"`
	}
	jsonWorksheetSection struct {
		Title string              `json:"title"`
		Lines []jsonWorksheetLine `json:"lines"`
	}
	jsonWorksheetLine struct {
		Name    string                `json:"name"`
		Of      string                `json:"of,omitempty"`
		Formula string                `json:"formula,omitempty"`
		Inputs  []jsonWorksheetInput  `json:"inputs"`
		Value   string                `json:"value,omitempty"`   // not there when it is not known
		Missing []jsonWorksheetAbsent `json:"missing,omitempty"` // inputs that the design would have to give
		Trouble string                `json:"trouble,omitempty"` // why it is not computed although every input is there
		Taken   string                `json:"taken,omitempty"`   // what it assumes
		Note    string                `json:"note,omitempty"`
		Source  string                `json:"source,omitempty"`
	}
	jsonWorksheetInput struct {
		Name   string `json:"name"`
		Value  string `json:"value"`
		Key    string `json:"key,omitempty"`  // of the design; computed without one
		Line   int    `json:"line,omitempty"` // of the design file
		Column int    `json:"column,omitempty"`
	}
	jsonWorksheetAbsent struct {
		Key  string `json:"key"`
		Line int    `json:"line"` // where the table stands that lacks it
	}
	jsonTaken struct {
		Text  string   `json:"text"`
		Lines []string `json:"lines"`
	}
)

// WriteWorksheetJSON writes a worksheet for other programs. The only error is one
// of the writer.
func WriteWorksheetJSON(w io.Writer, s *checker.Worksheet) error {
	return writeJSON(w, &jsonWorksheet{
		Format: "ventlint-worksheet", Version: 1, Note: closing, File: s.File, Project: s.Design.Project.Name,
		Sections: each(s.Sections, func(section checker.WorkedSection) jsonWorksheetSection {
			return jsonWorksheetSection{section.Title, each(section.Lines, jsonWorksheetLineOf)}
		}),
		Assumptions: each(s.Assumptions, func(t checker.Taken) jsonTaken { return jsonTaken(t) }),
	})
}

func jsonWorksheetLineOf(l checker.WorkedLine) jsonWorksheetLine {
	return jsonWorksheetLine{Name: l.Name, Of: l.Of, Formula: l.Formula, Value: l.Value, Trouble: l.Trouble,
		Taken: l.Taken, Note: l.Note, Source: l.Source,
		Inputs: each(l.Inputs, func(in checker.WorkedInput) jsonWorksheetInput {
			return jsonWorksheetInput{in.Name, in.Value, in.Key, in.Position.Line, in.Position.Column}
		}),
		Missing: each(l.Missing, func(m checker.MissingInput) jsonWorksheetAbsent {
			return jsonWorksheetAbsent{m.Key, inFile(m.Position).Line}
		})}
}
