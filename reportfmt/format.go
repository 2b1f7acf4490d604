package reportfmt

import (
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

// Format is one way to write the reviews of a run.
type Format interface {
	// Name is the word by which a user asks for the format.
	Name() string
	// begin gives what writes one report; nothing is written yet.
	begin(s Setting, o Output) writer
}

// writer writes one report while the reviews of a run come in: each design that
// could be reviewed, then each that could not, both in the order of the run. It
// keeps no review. The only errors are those of writing.
type writer interface {
	report(r *reviewed) error
	failure(f Failure) error
	end() error
}

// Failure is a design file that could not be reviewed, and why. A problem
// without a position is about the file as a whole.
type Failure struct {
	File     string // as the caller names it, with forward slashes
	Problems []document.Problem
}

// problems is never empty: a file that was not reviewed is always told of.
func (f Failure) problems() []document.Problem {
	if len(f.Problems) == 0 {
		return []document.Problem{{Message: "could not be reviewed"}}
	}
	return f.Problems
}

// Tool is the program that made the reviews.
type Tool struct {
	Name, Version string
}

// Options are the choices that some formats offer; the others ignore them.
type Options struct {
	Color bool // colours for a terminal, in the text format
	Width int  // columns of the text format; 80 when zero
}

// formats lists every format, in the order in which they are offered.
func formats() []Format {
	return []Format{
		textFormat{}, markdownFormat{}, htmlFormat{}, linesFormat{}, jsonFormat{}, csvFormat{},
		sarifFormat{}, evidenceFormat{}, junitFormat{}, annotationsFormat{}, gitlabFormat{},
	}
}

// Named finds a format by its name.
func Named(name string) (Format, error) {
	for _, f := range formats() {
		if f.Name() == name {
			return f, nil
		}
	}
	return nil, fmt.Errorf("unknown format %q, expected one of %s", name, strings.Join(Names(), ", "))
}

// Names lists the formats in the order in which they are offered.
func Names() []string {
	var names []string
	for _, f := range formats() {
		names = append(names, f.Name())
	}
	return names
}
