package expression

import "unicode"

const (
	maxSource = 4096 // bytes; the parser's recursion is bounded by nothing else
	standIn   = 'ʬ'  // begins the name that takes the place of a quantity
)

// scanner finds quantities and brackets in an expression, before it is parsed.
type scanner struct {
	source
	next    int   // character
	operand bool  // what came before can be the left side of an operator
	open    []int // brackets that wait for their mates
}

// scan prepares an expression for the parser.
func scan(text string) (*source, *Error) {
	if len(text) > maxSource {
		return nil, &Error{Offset: 0, Length: 1, Message: "expression is longer than 4096 bytes",
			Hint: "split the rule, or name parts of it with let"}
	}
	s := &scanner{source: newSource(text)}
	for s.next < s.size() {
		if err := s.token(); err != nil {
			return nil, err
		}
	}
	return &s.source, nil
}

// token steps over one token; it always moves on.
func (s *scanner) token() *Error {
	switch r := s.peek(0); {
	case r == standIn:
		return &Error{Offset: s.next, Length: 1, Message: `unexpected "ʬ"`}
	case isSpace(r):
		s.next++
	case r == '\'' || r == '"' || r == '`':
		s.skipString(r)
	case r == '/' && (s.peek(1) == '/' || s.peek(1) == '*'):
		s.skipComment()
	case isDigit(r) || r == '.' && !s.operand && isDigit(s.peek(1)):
		return s.number(s.next, s.next)
	case r == '-' && !s.operand:
		return s.minus()
	case isWord(r):
		return s.word()
	default:
		s.punctuation(r)
	}
	return nil
}

// peek looks ahead or back; beyond the text it sees a zero.
func (s *scanner) peek(ahead int) rune { return s.at(s.next + ahead) }

func (s *scanner) skipString(quote rune) {
	for s.next++; s.next < s.size() && s.peek(0) != quote; s.next++ {
		if s.peek(0) == '\\' && quote != '`' {
			s.next++
		}
	}
	s.next++
	s.operand = true
}

func (s *scanner) skipComment() {
	line := s.peek(1) == '/'
	for s.next += 2; s.next < s.size(); s.next++ {
		if line && s.peek(0) == '\n' {
			return
		}
		if !line && s.peek(0) == '*' && s.peek(1) == '/' {
			s.next += 2
			return
		}
	}
}

func (s *scanner) punctuation(r rune) {
	s.operand = r == ')' || r == ']' || r == '}' || r == '#'
	switch r {
	case '(', '[', '{':
		s.open = append(s.open, s.next)
	case ')', ']', '}':
		if n := len(s.open); n > 0 {
			s.brackets = append(s.brackets, span{s.open[n-1], s.next + 1})
			s.open = s.open[:n-1]
		}
	}
	s.next++
}

// isOperator tells the names that the language reads as operators.
func isOperator(name string) bool {
	switch name {
	case "and", "or", "not", "in", "let", "contains", "startsWith", "endsWith", "matches":
		return true
	}
	return false
}

func (s *scanner) word() *Error {
	from := s.next
	for isWord(s.peek(0)) {
		s.next++
	}
	name := s.part(from, s.next)
	if (name == "R" || name == "RSI") && s.peek(0) == '-' && isDigit(s.peek(1)) && !s.operand {
		s.next++
		s.digits()
		return s.keep(span{from, s.next}, s.part(from, s.next))
	}
	s.operand = !isOperator(name)
	return nil
}

// minus takes the sign of a literal: minus five degrees is a temperature, while
// the negative of a temperature is nothing.
func (s *scanner) minus() *Error {
	from := s.next
	s.next++
	s.blanks()
	if isDigit(s.peek(0)) || s.peek(0) == '.' && isDigit(s.peek(1)) {
		return s.number(from, s.next)
	}
	return nil
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func isSpace(r rune) bool { return unicode.IsSpace(r) }

// isWord tells whether the parser takes a rune as part of a name.
func isWord(r rune) bool { return r == '_' || r == '$' || unicode.IsLetter(r) || unicode.IsDigit(r) }
