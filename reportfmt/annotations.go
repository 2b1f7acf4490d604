package reportfmt

import (
	"cmp"
	"fmt"
	"io"
	"path"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// mostAnnotations is how many of a kind a host shows for one step of a build.
const mostAnnotations = 10

// annotationsFormat writes commands that a build host turns into remarks beside
// the lines of a change:
//
//	::error file=FILE,line=LINE,col=COLUMN,title=RULE::text
//
// Errors come first, then warnings, then notices, ten of each; the last line
// tells how many were left out.
type annotationsFormat struct{}

func (annotationsFormat) Name() string { return "annotations" }

func (annotationsFormat) begin(_ Setting, o Output) writer {
	return &annotationsWriter{to: o.To, first: map[string][]annotation{}, count: map[string]int{}}
}

// annotationsWriter keeps the first ten of each kind.
type annotationsWriter struct {
	to    io.Writer
	first map[string][]annotation // by command, in their order
	count map[string]int
	any   bool // a design was there
}

func (w *annotationsWriter) report(r *reviewed) error { return w.add(linesOf(r)) }

func (w *annotationsWriter) failure(f Failure) error { return w.add(linesOfFailure(f)) }

// add says what the format lines says.
func (w *annotationsWriter) add(lines []line) error {
	w.any = true
	for _, l := range lines {
		w.keep(annotation{commandOf(l.level), path.Clean(l.file), l.at, l.tag, l.text})
	}
	return nil
}

func (w *annotationsWriter) keep(a annotation) {
	w.count[a.command]++
	kept := append(w.first[a.command], a)
	slices.SortStableFunc(kept, compareAnnotations)
	w.first[a.command] = kept[:min(len(kept), mostAnnotations)]
}

func (w *annotationsWriter) end() error {
	if !w.any {
		w.keep(annotation{command: "error", title: driverName, text: nothingReviewed})
	}
	var out strings.Builder
	for _, command := range commands {
		for _, a := range w.first[command] {
			out.WriteString(a.String())
		}
	}
	out.WriteString(leftOut(w.count))
	_, err := io.WriteString(w.to, out.String())
	return err
}

type annotation struct {
	command string
	file    string // empty: about no file
	at      document.Position
	title   string
	text    string
}

// commands are what a host knows, heaviest first.
var commands = []string{"error", "warning", "notice"}

func commandOf(l rules.Level) string {
	if l == rules.Note {
		return "notice"
	}
	return string(l)
}

func compareAnnotations(a, b annotation) int {
	return cmp.Or(cmp.Compare(a.file, b.file), comparePositions(a.at, b.at), cmp.Compare(a.title, b.title))
}

func (a annotation) String() string {
	var place string
	if a.file != "" {
		place = fmt.Sprintf("file=%s,line=%d,col=%d,", commandValue(a.file), a.at.Line, a.at.Column)
	}
	return fmt.Sprintf("::%s %stitle=%s::%s\n", a.command, place, commandValue(a.title), commandText(a.text))
}

// noCommand gives a line that would begin a command something else to begin with.
func noCommand(line, lead string) string {
	if strings.HasPrefix(line, "::") {
		return lead + line
	}
	return line
}

// commandText keeps a text from ending its command.
func commandText(text string) string {
	return ofCommand.Replace(oneLine(text))
}

// commandValue keeps a value from ending its place in a command as well.
func commandValue(text string) string {
	return ofValue.Replace(commandText(text))
}

var (
	ofCommand = strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A")
	ofValue   = strings.NewReplacer(":", "%3A", ",", "%2C")
)

// leftOut is a line that is no command.
func leftOut(count map[string]int) string {
	var more []string
	for _, command := range commands {
		if n := count[command] - mostAnnotations; n > 0 {
			more = append(more, plural(n, "more "+command, "more "+command+"s"))
		}
	}
	if len(more) == 0 {
		return ""
	}
	return enumerated(more) + " in the other reports\n"
}
