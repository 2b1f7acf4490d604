package expression

import "strings"

// source is an expression as written, and as the parser gets it: with a name of
// the same length in place of every quantity, so that all offsets agree.
type source struct {
	plain    string // as written, where bytes are characters; else empty
	written  []rune
	code     []rune
	literals map[int]any // quantities by the offset of their first character
	mates    map[int]int // offset of each bracket: offset of the one that it pairs with
}

// span is a part of a source, in runes: from is in it, to is not.
type span struct{ from, to int }

func (s span) with(other span) span { return span{min(s.from, other.from), max(s.to, other.to)} }

// text gives a part as written, on one line.
func (s *source) text(at span) string {
	from, to := max(at.from, 0), min(at.to, len(s.written))
	if from >= to {
		return ""
	}
	if s.plain != "" && oneLine(s.plain[from:to]) {
		return s.plain[from:to]
	}
	return strings.Join(strings.Fields(string(s.written[from:to])), " ")
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

// balanced widens a part until it holds the mate of each of its brackets.
func (s *source) balanced(at span) span {
	seen := span{at.from, at.from}
	for {
		var i int
		switch {
		case seen.to < at.to:
			i = seen.to
			seen.to++
		case seen.from > at.from:
			seen.from--
			i = seen.from
		default:
			return at
		}
		if mate, ok := s.mates[i]; ok {
			at = at.with(span{mate, mate + 1})
		}
	}
}

// called widens a name to the arguments that follow it.
func (s *source) called(at span) span {
	open := at.to
	for open < len(s.code)-1 && s.code[open] != '(' {
		open++
	}
	return s.balanced(span{at.from, open + 1})
}
