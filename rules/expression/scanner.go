package expression

import "unicode"

const (
	maxSource = 4096 // bytes; the parser's recursion is bounded by nothing else
	standIn   = 'ʬ'  // begins the name that takes the place of a quantity
)

// scanner finds quantities and brackets in an expression, before it is parsed.
type scanner struct {
	source
	at      int
	operand bool  // what came before can be the left side of an operator
	open    []int // brackets that wait for their mates
}

// scan prepares an expression for the parser.
func scan(text string) (*source, *Error) {
	if len(text) > maxSource {
		return nil, &Error{Offset: 0, Length: 1, Message: "expression is longer than 4096 bytes",
			Hint: "split the rule, or name parts of it with let"}
	}
	s := &scanner{source: source{written: []rune(text), code: []rune(text), literals: map[int]any{}, mates: map[int]int{}}}
	if len(s.written) == len(text) {
		s.plain = text
	}
	for s.at < len(s.written) {
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
		return &Error{Offset: s.at, Length: 1, Message: `unexpected "ʬ"`}
	case isSpace(r):
		s.at++
	case r == '\'' || r == '"' || r == '`':
		s.skipString(r)
	case r == '/' && (s.peek(1) == '/' || s.peek(1) == '*'):
		s.skipComment()
	case isDigit(r) || r == '.' && !s.operand && isDigit(s.peek(1)):
		return s.number(s.at, s.at)
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
func (s *scanner) peek(ahead int) rune {
	if i := s.at + ahead; i < 0 || i >= len(s.written) {
		return 0
	}
	return s.written[s.at+ahead]
}

func (s *scanner) skipString(quote rune) {
	for s.at++; s.at < len(s.written) && s.peek(0) != quote; s.at++ {
		if s.peek(0) == '\\' && quote != '`' {
			s.at++
		}
	}
	s.at++
	s.operand = true
}

func (s *scanner) skipComment() {
	line := s.peek(1) == '/'
	for s.at += 2; s.at < len(s.written); s.at++ {
		if line && s.peek(0) == '\n' {
			return
		}
		if !line && s.peek(0) == '*' && s.peek(1) == '/' {
			s.at += 2
			return
		}
	}
}

func (s *scanner) punctuation(r rune) {
	s.operand = r == ')' || r == ']' || r == '}' || r == '#'
	switch r {
	case '(', '[', '{':
		s.open = append(s.open, s.at)
	case ')', ']', '}':
		if n := len(s.open); n > 0 {
			s.mates[s.open[n-1]], s.mates[s.at] = s.at, s.open[n-1]
			s.open = s.open[:n-1]
		}
	}
	s.at++
}

// operatorWords are names that the language reads as operators.
var operatorWords = map[string]bool{"and": true, "or": true, "not": true, "in": true, "let": true,
	"contains": true, "startsWith": true, "endsWith": true, "matches": true}

func (s *scanner) word() *Error {
	from := s.at
	for isWord(s.peek(0)) {
		s.at++
	}
	name := string(s.written[from:s.at])
	if (name == "R" || name == "RSI") && s.peek(0) == '-' && isDigit(s.peek(1)) && !s.operand {
		s.at++
		s.digits()
		return s.keep(span{from, s.at}, string(s.written[from:s.at]))
	}
	s.operand = !operatorWords[name]
	return nil
}

// minus takes the sign of a literal: minus five degrees is a temperature, while
// the negative of a temperature is nothing.
func (s *scanner) minus() *Error {
	from := s.at
	s.at++
	s.blanks()
	if isDigit(s.peek(0)) || s.peek(0) == '.' && isDigit(s.peek(1)) {
		return s.number(from, s.at)
	}
	return nil
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func isSpace(r rune) bool { return unicode.IsSpace(r) }

// isWord tells whether the parser takes a rune as part of a name.
func isWord(r rune) bool { return r == '_' || r == '$' || unicode.IsLetter(r) || unicode.IsDigit(r) }
