package reportfmt

import (
	"bytes"
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

func (linesFormat) begin(_ Setting, o Output) writer {
	return &linesWriter{o.To, parts{aside: o.Aside()}}
}

// linesWriter puts the lines of all designs into the order of their files.
type linesWriter struct {
	to    io.Writer
	lines parts
}

func (w *linesWriter) report(r *reviewed) error { return w.add(r.File, linesOf(r)) }

func (w *linesWriter) failure(f Failure) error { return w.add(f.File, linesOfFailure(f)) }

func (w *linesWriter) add(file string, lines []line) error {
	var out bytes.Buffer
	for _, l := range lines {
		fmt.Fprintf(&out, "%s:%d:%d: %s: %s [%s]\n", noCommand(oneLine(l.file), "./"), l.at.Line, l.at.Column, l.level, oneLine(l.text), oneLine(l.tag))
	}
	return w.lines.add(file, out.Bytes())
}

func (w *linesWriter) end() error {
	w.lines.sort()
	return w.lines.each(func(text []byte) error { _, err := w.to.Write(text); return err })
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
	return cmp.Or(comparePositions(a.at, b.at), cmp.Compare(a.tag, b.tag))
}

// linesOf lists the lines of a report in their order.
func linesOf(r *reviewed) []line {
	var all []line
	for _, p := range problems(r.Report) {
		all = append(all, lineOf(r.File, p.Result.Position, shownLevel(p.Result), problemText(p.Result)+r.changes.mark(p.Result), ruleID(p.Result), fingerprint(p.Result)))
	}
	if r.Count().Decided() == 0 {
		all = append(all, lineOf(r.File, document.Position{}, rules.Error, nothingChecked, reviewTag, ""))
	}
	for _, remark := range r.Remarks {
		all = append(all, lineOf(r.File, remark.Position, rules.Note, remark.Text, reviewTag, remark.Text))
	}
	slices.SortStableFunc(all, compareLines)
	return all
}

// linesOfFailure lists the mistakes of a design in the order of the file.
func linesOfFailure(f Failure) []line {
	var all []line
	for _, p := range f.problems() {
		all = append(all, lineOf(f.File, p.Position, rules.Error, mistake(p), designTag, mistake(p)))
	}
	slices.SortStableFunc(all, compareLines)
	return all
}

func lineOf(file string, at document.Position, level rules.Level, text, tag, key string) line {
	return line{file, inFile(at), level, text, tag, strings.Join([]string{file, tag, key}, "\x00")}
}
