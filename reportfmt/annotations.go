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

func (annotationsFormat) Write(w io.Writer, b Batch) error {
	all := annotationsOf(b)
	slices.SortStableFunc(all, compareAnnotations)
	var out strings.Builder
	count := map[string]int{}
	for _, a := range all {
		if count[a.command]++; count[a.command] <= mostAnnotations {
			out.WriteString(a.String())
		}
	}
	out.WriteString(leftOut(count))
	_, err := io.WriteString(w, out.String())
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
	return cmp.Or(
		cmp.Compare(slices.Index(commands, a.command), slices.Index(commands, b.command)),
		cmp.Compare(a.file, b.file), comparePositions(a.at, b.at), cmp.Compare(a.title, b.title),
	)
}

// annotationsOf says what the format lines says.
func annotationsOf(b Batch) []annotation {
	if b.empty() {
		return []annotation{{command: "error", title: driverName, text: nothingReviewed}}
	}
	var all []annotation
	for _, l := range problemLines(b) {
		all = append(all, annotation{commandOf(l.level), path.Clean(l.file), l.at, l.tag, l.text})
	}
	return all
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
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A").Replace(oneLine(text))
}

// commandValue keeps a value from ending its place in a command as well.
func commandValue(text string) string {
	return strings.NewReplacer(":", "%3A", ",", "%2C").Replace(commandText(text))
}

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
