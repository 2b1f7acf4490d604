package document

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// reader reads TOML 1.1. It stops at the first mistake of grammar, but goes on
// after a key that is given twice. Every loop in it consumes the source.
type reader struct {
	*Tree
	at       int             // offset of the next byte
	section  *node           // table that keys belong to
	within   map[*node]*node // of a dotted table: the table whose keys may add to it
	problems []Problem       // that did not stop it

	unwanted string // header of tables that are left out; empty: none are

	parts []part // of the key being read
	marks marks  // of the keys of the table being read

	quoted  int   // offset after the last text with quotes
	record  bool  // note where the characters of a text stand
	offsets []int // where they do
}

// stop is thrown by fail and caught by read.
type stop struct{ Problem }

// read reads the whole document into the tree. Problems that it could read on
// after are in r.problems; the one that stopped it is returned.
func (r *reader) read() (stopped *Problem) {
	defer func() {
		switch thrown := recover().(type) {
		case nil:
		case stop:
			stopped = &thrown.Problem
		default:
			panic(thrown)
		}
	}()
	r.at = begin(r.source)
	r.beyond = r.at > 0
	r.within = map[*node]*node{}
	r.section = r.more()
	r.section.origin = headed
	for r.blank(); !r.end(); r.blank() {
		switch {
		case r.unwanted != "" && r.has(r.unwanted):
			r.passOver()
			continue
		case r.peek() == '[':
			r.header()
		default:
			r.pair(r.section)
		}
		r.endOfStatement()
	}
	return nil
}

// fail ends reading with a problem.
func (r *reader) fail(at span, hint, format string, args ...any) {
	panic(stop{Problem{Position: r.lines.position(at), Message: fmt.Sprintf(format, args...), Hint: hint}})
}

func (r *reader) end() bool { return r.at >= len(r.source) }

// peek gives the next byte; 0 at the end, where has and other tests of it fail.
func (r *reader) peek() byte {
	if r.end() {
		return 0
	}
	return r.source[r.at]
}

func (r *reader) has(prefix string) bool {
	return strings.HasPrefix(r.source[r.at:], prefix)
}

// take consumes a character if it comes next.
func (r *reader) take(c byte) bool {
	if r.end() || r.source[r.at] != c {
		return false
	}
	r.at++
	return true
}

// next is the span of the next character; empty at the end.
func (r *reader) next() span {
	_, size := utf8.DecodeRuneInString(r.source[r.at:])
	return spanOf(r.at, r.at+size)
}

// spaces skips blanks and tabs.
func (r *reader) spaces() {
	at := r.at
	for at < len(r.source) && (r.source[at] == ' ' || r.source[at] == '\t') {
		at++
	}
	r.at = at
}

// blank skips blanks, tabs, line ends and comments.
func (r *reader) blank() {
	for {
		switch r.peek() {
		case ' ', '\t', '\n':
			r.at++
		case '#':
			r.comment()
		default:
			if !r.newline() {
				return
			}
		}
	}
}

// newline consumes one line end.
func (r *reader) newline() bool {
	if r.has("\r\n") {
		r.at++
	}
	return r.take('\n')
}

func (r *reader) endOfLine() bool { return r.end() || r.peek() == '\n' || r.has("\r\n") }

// comment consumes a comment up to its line end.
func (r *reader) comment() bool {
	if !r.take('#') {
		return false
	}
	for r.printable(); !r.endOfLine(); r.printable() {
		r.character()
	}
	return true
}

// printable consumes characters that need no second look.
func (r *reader) printable() {
	at := r.at
	for at < len(r.source) && isPrintable(r.source[at]) {
		at++
	}
	r.at = at
}

// character consumes one character that may stand in a comment or text.
func (r *reader) character() {
	if c := r.peek(); !isPrintable(c) {
		r.fail(r.next(), "", "found the control character U+%04X, expected printable text", c)
	}
	r.at = int(r.next().end)
}

func (r *reader) endOfStatement() {
	r.spaces()
	r.comment()
	if r.end() || r.newline() {
		return
	}
	hint := ""
	if r.quoted == r.at && !r.has("#") {
		hint = `the quote before ends the text: put text that holds ' or " in quotes of the other kind, or write \"`
	}
	r.fail(r.next(), hint, "found %s, expected the end of the line", r.found())
}

// found says what comes next.
func (r *reader) found() string {
	switch {
	case r.end():
		return "the end of the file"
	case r.endOfLine():
		return "the end of the line"
	case r.peek() == '"':
		return `a quote (")`
	}
	next := r.next()
	return fmt.Sprintf("%q", r.source[next.start:next.end])
}

// excerpt is source text for a message: its first line, not too long.
func (r *reader) excerpt(s span) string { return excerpt(r.source[s.start:s.end]) }

func excerpt(source string) string {
	const most = 40
	line, _, cut := strings.Cut(source, "\n")
	runes := []rune(strings.TrimRight(line, "\r"))
	if len(runes) > most {
		runes, cut = runes[:most], true
	}
	if cut {
		return string(runes) + "..."
	}
	return string(runes)
}
