package rules

import (
	"fmt"
	"sort"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

// mistakes gathers all that is wrong with the packs of one load.
type mistakes struct {
	file  string
	files []FileProblem
}

// FileProblem is one mistake in one pack file.
type FileProblem struct {
	File string
	document.Problem
}

func (m *mistakes) add(at document.Position, path, message, hint string) {
	m.files = append(m.files, FileProblem{m.file, document.Problem{Position: at, Path: path, Message: message, Hint: hint}})
}

func (m *mistakes) addAll(problems []document.Problem) {
	for _, p := range problems {
		m.files = append(m.files, FileProblem{m.file, p})
	}
}

// in gives the same list, for mistakes of another file.
func (m *mistakes) in(file string, check func(*mistakes)) {
	before := m.file
	m.file = file
	check(m)
	m.file = before
}

func (m *mistakes) count() int { return len(m.files) }

// near names what was probably meant. It gives up where there are many mistakes:
// comparing words takes time.
func (m *mistakes) near(word string, among []string) string {
	const many = 100
	if m.count() > many {
		return ""
	}
	if near := document.Near(word, among); near != "" && near != word {
		return fmt.Sprintf("did you mean %q?", near)
	}
	return ""
}

// err is nil when nothing was wrong.
func (m *mistakes) err() error {
	if len(m.files) == 0 {
		return nil
	}
	sort.SliceStable(m.files, func(i, j int) bool {
		a, b := m.files[i], m.files[j]
		if a.File != b.File {
			return a.File < b.File
		}
		if a.Position.Line != b.Position.Line {
			return a.Position.Line < b.Position.Line
		}
		return a.Position.Column < b.Position.Column
	})
	if len(m.files) > document.MaxProblems {
		rest := m.files[document.MaxProblems]
		rest.Message, rest.Hint = "found more mistakes from here on, which are not listed", ""
		m.files = append(m.files[:document.MaxProblems:document.MaxProblems], rest)
	}
	return &InvalidPack{m.files}
}

// InvalidPack says everything that is wrong with a pack and its parents.
type InvalidPack struct{ Problems []FileProblem }

// Error gives one line for each mistake: file:line:column: message.
func (e *InvalidPack) Error() string {
	var lines []string
	for _, p := range e.Problems {
		line := fmt.Sprintf("%s:%d:%d: %s", p.File, p.Position.Line, p.Position.Column, p.Message)
		if p.Hint != "" {
			line += "\n    hint: " + p.Hint
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}
