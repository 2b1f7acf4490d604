package expression

import (
	"strings"
	"unicode/utf8"
)

// source is an expression as written. The parser gets it with a name of the same
// length in place of every quantity, so that all offsets agree; they count characters.
type source struct {
	written  string
	runes    []rune // of written; nil where its bytes are its characters
	literals []quantityAt
	brackets []span // pairs, each with what it holds
}

// quantityAt is a quantity and where it stands.
type quantityAt struct {
	span
	value any
}

func newSource(text string) source {
	s := source{written: text}
	for i := range len(text) {
		if text[i] >= utf8.RuneSelf {
			s.runes = []rune(text)
			break
		}
	}
	return s
}

// size is the number of characters.
func (s *source) size() int {
	if s.runes != nil {
		return len(s.runes)
	}
	return len(s.written)
}

// at gives one character; beyond the text it is a zero.
func (s *source) at(i int) rune {
	switch {
	case i < 0 || i >= s.size():
		return 0
	case s.runes != nil:
		return s.runes[i]
	}
	return rune(s.written[i])
}

// part gives a part as written.
func (s *source) part(from, to int) string {
	if s.runes != nil {
		return string(s.runes[from:to])
	}
	return s.written[from:to]
}

// span is a part of a source, in runes: from is in it, to is not.
type span struct{ from, to int }

func (s span) with(other span) span { return span{min(s.from, other.from), max(s.to, other.to)} }

func (s span) holds(at int) bool { return s.from <= at && at < s.to }

// text gives a part as written, on one line.
func (s *source) text(at span) string {
	from, to := max(at.from, 0), min(at.to, s.size())
	if from >= to {
		return ""
	}
	text := s.part(from, to)
	if s.runes == nil && oneLine(text) {
		return text
	}
	return strings.Join(strings.Fields(text), " ")
}

// oneLine tells whether a text has single blanks inside and no others.
func oneLine(text string) bool {
	before := byte(' ')
	for i := range len(text) {
		if text[i] < ' ' || text[i] == ' ' && before == ' ' {
			return false
		}
		before = text[i]
	}
	return before != ' '
}

// literal gives the quantity that begins at a place.
func (s *source) literal(from int) (value any, ok bool) {
	for _, l := range s.literals {
		if l.from == from {
			return l.value, true
		}
	}
	return nil, false
}

// code is what the parser gets.
func (s *source) code() string {
	if len(s.literals) == 0 {
		return s.part(0, s.size())
	}
	var b strings.Builder
	b.Grow(len(s.written) + len(s.literals))
	done := 0
	for _, l := range s.literals {
		b.WriteString(s.part(done, l.from))
		b.WriteRune(standIn)
		for range l.to - l.from - 1 {
			b.WriteByte('_')
		}
		done = l.to
	}
	b.WriteString(s.part(done, s.size()))
	return b.String()
}

// balanced widens a part until it holds the mate of each of its brackets. Pairs do
// not cross, so that a pair that is taken in cuts no other.
func (s *source) balanced(at span) span {
	for _, pair := range s.brackets {
		if at.holds(pair.from) != at.holds(pair.to-1) {
			at = at.with(pair)
		}
	}
	return at
}

// called widens a name to the arguments that follow it.
func (s *source) called(at span) span {
	open := at.to
	for open < s.size()-1 && s.at(open) != '(' {
		open++
	}
	return s.balanced(span{at.from, open + 1})
}
