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
// as one on a variance that ended, is a note tagged [review]. With a baseline, the
// text of what is new ends with "(new)".
type linesFormat struct{}

func (linesFormat) Name() string { return "lines" }

func (linesFormat) Write(w io.Writer, b Batch) error {
	var out strings.Builder
	for _, l := range problemLines(b) {
		fmt.Fprintf(&out, "%s:%d:%d: %s: %s [%s]\n", noCommand(oneLine(l.file), "./"), l.at.Line, l.at.Column, l.level, oneLine(l.text), oneLine(l.tag))
	}
	_, err := io.WriteString(w, out.String())
	return err
}

// Tags of lines that are about no rule.
const (
	designTag = "design"
	reviewTag = "review"
)

// line is one line of the format.
type line struct {
	file  string
	at    document.Position
	level rules.Level
	text  string
	tag   string
	key   string // tells it from others whatever line it stands on
}

func compareLines(a, b line) int {
	return cmp.Or(cmp.Compare(a.file, b.file), comparePositions(a.at, b.at), cmp.Compare(a.tag, b.tag))
}

// problemLines lists the lines of a batch in their order.
func problemLines(b Batch) []line {
	var all []line
	add := func(file string, at document.Position, level rules.Level, text, tag, key string) {
		all = append(all, line{file, inFile(at), level, text, tag, strings.Join([]string{file, tag, key}, "\x00")})
	}
	c := b.changes()
	for _, p := range problems(b) {
		add(p.File, p.Result.Position, shownLevel(p.Result), problemText(p.Result)+c.mark(p.Result), ruleID(p.Result), fingerprint(p.Result))
	}
	for _, f := range b.Failures {
		for _, p := range f.problems() {
			add(f.File, p.Position, rules.Error, mistake(p), designTag, mistake(p))
		}
	}
	for _, r := range b.Reports {
		if r.Count().Decided() == 0 {
			add(r.File, document.Position{}, rules.Error, nothingChecked, reviewTag, "")
		}
		for _, remark := range r.Remarks {
			add(r.File, remark.Position, rules.Note, remark.Text, reviewTag, remark.Text)
		}
	}
	slices.SortStableFunc(all, compareLines)
	return all
}
