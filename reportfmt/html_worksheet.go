package reportfmt

import (
	"fmt"

	"github.com/ventlint/ventlint/checker"
)

// htmlSection is the computed values of one subject.
type htmlSection struct {
	Title string
	Lines []htmlLine
}

// htmlLine is one computed value with its trail.
type htmlLine struct {
	Name, Formula, Value, Note, Source string
	Inputs                             []string
	Open                               bool // it has no value
}

// htmlWorksheet gives the worksheet of a design; none for one that has no
// dwelling, which only a report that no loader made can be about.
func htmlWorksheet(r *checker.Report) []htmlSection {
	if r.Design == nil || r.Design.Dwelling == nil {
		return nil
	}
	var all []htmlSection
	for _, section := range checker.Work(r.File, r.Design).Sections {
		made := htmlSection{Title: section.Title}
		for _, line := range section.Lines {
			made.Lines = append(made.Lines, htmlLineOf(line))
		}
		all = append(all, made)
	}
	return all
}

func htmlLineOf(l checker.WorkedLine) htmlLine {
	made := htmlLine{Name: joined(", ", l.Name, l.Of), Formula: l.Formula, Value: l.Value, Note: joined("; ", l.Taken, l.Note), Source: l.Source}
	for _, in := range l.Inputs {
		made.Inputs = append(made.Inputs, fmt.Sprintf("%s = %s%s", in.Name, in.Value, source(in)))
	}
	switch {
	case len(l.Missing) > 0:
		made.Open, made.Value = true, "missing: "+enumerated(missingNames(l.Missing))
	case l.Trouble != "":
		made.Open, made.Value = true, "not computed: "+l.Trouble
	}
	return made
}
