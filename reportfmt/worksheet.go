package reportfmt

import (
	"fmt"
	"io"
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/document"
)

// WriteWorksheet writes every computed value of a design with its formula, its
// inputs and their places, so that a reader can follow with a pocket calculator.
// The only error is one of the writer.
func WriteWorksheet(w io.Writer, s *checker.Worksheet, o Options) error {
	p := newPage(o)
	p.prose(0, strong, "Worksheet")
	p.blank()
	p.heading("Project", s.Design.Project.Name)
	p.heading("Design file", s.File)
	for _, section := range s.Sections {
		p.chapter(section.Title, "")
		for _, line := range section.Lines {
			p.blank()
			p.worked(s.File, line)
		}
	}
	p.list("Assumptions", assumedLead, each(s.Assumptions, assumedText))
	p.blank()
	p.prose(0, subdued, closing)
	return p.flush(w)
}

const assumedLead = "Taken because the design does not say; each with the lines that rest on it."

func assumedText(t checker.Taken) string { return t.Text + ": " + strings.Join(t.Lines, "; ") }

// worked writes one computed value.
func (p *page) worked(file string, l checker.WorkedLine) {
	p.prose(2, strong, joined(", ", l.Name, l.Of))
	p.field("Formula", plain, l.Formula)
	label := "With"
	for _, in := range l.Inputs {
		p.field(label, plain, fmt.Sprintf("%s = %s%s", in.Name, in.Value, source(in)))
		label = ""
	}
	switch {
	case len(l.Missing) > 0:
		p.eachField("Missing", missingNames(l.Missing))
	case l.Trouble != "":
		p.field("Not computed", plain, l.Trouble)
	default:
		p.field("Result", strong, l.Value)
	}
	p.field("Taken", plain, l.Taken)
	p.field("Note", plain, l.Note)
	p.field("Source", subdued, l.Source)
}

// source tells where the design gives an input, or that it is computed.
func source(in checker.WorkedInput) string {
	if in.Position == (document.Position{}) {
		return " (computed)"
	}
	return fmt.Sprintf(" (line %d, %s)", in.Position.Line, in.Key)
}

func missingNames(missing []checker.MissingInput) []string {
	var names []string
	for _, m := range missing {
		names = append(names, fmt.Sprintf("%s (line %d)", m.Key, inFile(m.Position).Line))
	}
	return names
}
