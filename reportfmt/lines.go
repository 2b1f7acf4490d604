package reportfmt

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// linesFormat writes one line for each problem and nothing else:
//
//	file:line:column: level: text [pack:rule]
//
// A failed rule has its level and what was found. A missing input has the level
// that the rule gives it and begins "open, needs", so that a reader of levels
// sees it. What a person must judge begins "to be judged" and is always a note,
// because it never fails a review. A mistake in a design file, and a review in
// which no rule could be decided, are errors tagged [design] and [review]; they
// stand at the first character when they are about the whole file. A remark, such
// as one on a variance that ended, is a note tagged [review].
type linesFormat struct{}

func (linesFormat) Name() string { return "lines" }

func (linesFormat) Write(w io.Writer, b Batch) error {
	all := problemLines(b)
	slices.SortStableFunc(all, compareLines)
	var out strings.Builder
	for _, l := range all {
		fmt.Fprintf(&out, "%s:%d:%d: %s: %s [%s]\n", oneLine(l.file), l.at.Line, l.at.Column, l.level, oneLine(l.text), oneLine(l.tag))
	}
	_, err := io.WriteString(w, out.String())
	return err
}

// line is one line of the format.
type line struct {
	file  string
	at    document.Position
	level rules.Level
	text  string
	tag   string
}

func compareLines(a, b line) int {
	return cmp.Or(cmp.Compare(a.file, b.file), comparePositions(a.at, b.at), cmp.Compare(a.tag, b.tag))
}

func problemLines(b Batch) []line {
	var all []line
	for _, p := range problems(b) {
		all = append(all, line{p.File, inFile(p.Result.Position), shownLevel(p.Result), problemText(p.Result), ruleID(p.Result)})
	}
	for _, f := range b.Failures {
		for _, p := range f.problems() {
			all = append(all, line{f.File, inFile(p.Position), rules.Error, mistake(p), "design"})
		}
	}
	for _, r := range b.Reports {
		if r.Count().Decided() == 0 {
			all = append(all, line{r.File, inFile(document.Position{}), rules.Error, nothingChecked, "review"})
		}
		for _, remark := range r.Remarks {
			all = append(all, line{r.File, inFile(remark.Position), rules.Note, remark.Text, "review"})
		}
	}
	return all
}
