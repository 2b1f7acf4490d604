package checker

import (
	"cmp"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/facts"
)

// Worksheet is every computed value of a design, printed in the design's units.
type Worksheet struct {
	File     string
	Design   *design.Design
	Sections []WorkedSection

	Assumptions []Taken // of all lines, each once
}

// Taken is what lines of a worksheet assume.
type Taken struct {
	Text  string
	Lines []string // that rest on it
}

// WorkedSection is the computed values of one subject, in the order in which
// they follow from each other.
type WorkedSection struct {
	Title string
	Lines []WorkedLine
}

// WorkedLine is one computed value with its trail.
type WorkedLine struct {
	Name, Of, Formula, Value string
	Inputs                   []WorkedInput
	Missing                  []MissingInput // inputs that the design would have to give
	Trouble                  string         // why it cannot be computed although every input is there
	Taken                    string         // what was assumed
	Note, Source             string
}

// WorkedInput is one value that a line computes with. A zero position stands for
// what is computed.
type WorkedInput struct {
	Name, Value, Key string
	Position         document.Position
}

// Work computes the worksheet of a design. file is how it is called.
func Work(file string, d *design.Design) *Worksheet {
	units := systemOf(d)
	s := &Worksheet{File: file, Design: d}
	for _, section := range facts.Of(d).Worksheet() {
		worked := WorkedSection{Title: section.Title}
		for _, line := range section.Lines {
			worked.Lines = append(worked.Lines, workedLine(line, units))
			s.take(line)
		}
		s.Sections = append(s.Sections, worked)
	}
	return s
}

// take lists what a line assumes.
func (s *Worksheet) take(l facts.Line) {
	if l.Taken == "" || l.Value == nil {
		return
	}
	name := l.Name
	if l.Of != "" {
		name += ", " + l.Of
	}
	i := slices.IndexFunc(s.Assumptions, func(t Taken) bool { return t.Text == l.Taken })
	if i < 0 {
		s.Assumptions = append(s.Assumptions, Taken{l.Taken, []string{name}})
		return
	}
	s.Assumptions[i].Lines = append(s.Assumptions[i].Lines, name)
}

func workedLine(l facts.Line, units quantity.System) WorkedLine {
	if l.House {
		units = units.House()
	}
	worked := WorkedLine{Name: l.Name, Of: l.Of, Formula: l.Formula, Trouble: l.Trouble, Taken: l.Taken, Note: l.Note, Source: l.Source}
	if l.Value != nil {
		worked.Value = quantity.Format(l.Value, units)
	}
	for _, in := range l.Inputs {
		input := WorkedInput{Name: in.Name, Value: quantity.Format(in.Value, units)}
		if in.Key != "" {
			input.Key, input.Position = in.Ref.KeyName(in.Key), in.Ref.At(in.Key)
		}
		worked.Inputs = append(worked.Inputs, input)
	}
	for _, m := range l.Missing {
		worked.Missing = append(worked.Missing, MissingInput{m.Ref.KeyName(m.Key), m.Ref.Position()})
	}
	return worked
}

// figures are the computed values that a reader of a review asks for first.
func figures(f *facts.Facts, units quantity.System) []Figure {
	var list []Figure
	for _, line := range f.Figures() {
		list = append(list, Figure{line.Name, line.Of, workedLine(*line, units).Value, cmp.Or(line.Note, line.Taken)})
	}
	return list
}
