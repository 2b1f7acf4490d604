package expression

import (
	"fmt"
	"sort"
	"strings"
	"sync"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/quantity"
)

// unit is one spelling of a unit in expressions.
type unit struct {
	spelling []rune
	symbol   string // as package quantity reads it
}

// units holds the spellings by their first rune, longest first.
var units = sync.OnceValue(func() map[rune][]unit {
	by := map[rune][]unit{}
	add := func(spelling, symbol string) {
		first := []rune(spelling)[0]
		by[first] = append(by[first], unit{[]rune(spelling), symbol})
	}
	for _, u := range quantity.Units() {
		add(u.Symbol, u.Symbol)
	}
	for _, list := range by {
		sort.SliceStable(list, func(i, j int) bool { return len(list[i].spelling) > len(list[j].spelling) })
	}
	return by
})

// digits steps over a plain number.
func (s *scanner) digits() {
	s.run()
	if s.peek(0) == '.' && isDigit(s.peek(1)) {
		s.next++
		s.run()
	}
	ahead := 1
	if s.peek(1) == '-' || s.peek(1) == '+' {
		ahead = 2
	}
	if (s.peek(0) == 'e' || s.peek(0) == 'E') && isDigit(s.peek(ahead)) {
		s.next += ahead
		s.run()
	}
}

func (s *scanner) run() {
	for isDigit(s.peek(0)) || s.peek(0) == '_' {
		s.next++
	}
}

// number steps over a number that begins at digits; with a unit behind it, it is
// a quantity that begins at from, where its sign may stand.
func (s *scanner) number(from, digits int) *Error {
	s.next = digits
	s.digits()
	s.operand = true
	end := s.next
	if s.fraction() {
		if u, ok := s.unit(); ok && u.symbol != "%" {
			return s.quantity(from, u)
		}
		s.next = end
	}
	if u, ok := s.unit(); ok {
		return s.quantity(from, u)
	}
	return s.bare(end)
}

// fraction takes the rest of "1/4" and of "4 1/2"; what has a unit behind it is
// no division, because nothing divides a plain number by a length.
func (s *scanner) fraction() bool {
	start := s.next
	if s.peek(0) == ' ' {
		s.blanks()
		s.run()
	}
	if s.peek(-1) != ' ' && s.peek(0) == '/' && isDigit(s.peek(1)) {
		s.next++
		s.run()
		return true
	}
	s.next = start
	return false
}

func (s *scanner) blanks() {
	for s.peek(0) == ' ' {
		s.next++
	}
}

// quantity keeps what began at from and has a unit behind it.
func (s *scanner) quantity(from int, u unit) *Error {
	number := strings.ReplaceAll(s.part(from, s.next), "_", "")
	if sign, ok := strings.CutPrefix(number, "-"); ok {
		number = "-" + strings.TrimLeft(sign, " ")
	}
	text := number + " " + u.symbol
	s.blanks()
	s.next += len(u.spelling)
	if u.symbol == "ft" {
		text += s.inches()
	}
	return s.keep(span{from, s.next}, text)
}

// bare leaves a number without a unit to the parser, but not one with a word
// that is no unit.
func (s *scanner) bare(end int) *Error {
	s.blanks()
	from := s.next
	for isWord(s.peek(0)) {
		s.next++
	}
	word := s.part(from, s.next)
	if word == "" || isDigit(rune(word[0])) || isOperator(word) {
		s.next = end
		return nil
	}
	err := &Error{Offset: from, Length: s.next - from, Message: fmt.Sprintf("unknown unit %q", word)}
	if near := document.Near(word, unitNames()); near != "" {
		err.Hint = fmt.Sprintf("did you mean %q?", near)
	}
	return err
}

func unitNames() []string {
	var names []string
	for _, u := range quantity.Units() {
		names = append(names, u.Symbol)
	}
	return names
}

// inches takes the second half of "12 ft 4 in".
func (s *scanner) inches() string {
	start := s.next
	s.blanks()
	from := s.next
	for isDigit(s.peek(0)) || s.peek(0) == '.' || s.peek(0) == '/' || s.peek(0) == ' ' {
		s.next++
	}
	number := strings.TrimSpace(s.part(from, s.next))
	if u, ok := s.unit(); ok && (u.symbol == "in" || u.symbol == "inch") && from > start && number != "" {
		s.blanks()
		s.next += len(u.spelling)
		return " " + number + " in"
	}
	s.next = start
	return ""
}

// unit finds the longest unit that stands here as a whole, blanks before it left out.
func (s *scanner) unit() (unit, bool) {
	start := s.next
	defer func() { s.next = start }()
	s.blanks()
	for _, u := range units()[plain(s.peek(0))] {
		if s.stands(u.spelling) && (string(u.spelling) != "in" || !s.inAsOperator()) {
			return u, true
		}
	}
	return unit{}, false
}

func (s *scanner) stands(spelling []rune) bool {
	for i, r := range spelling {
		if plain(s.peek(i)) != r {
			return false
		}
	}
	last, next := spelling[len(spelling)-1], s.peek(len(spelling))
	if !isWord(last) {
		return true
	}
	division := strings.ContainsRune(string(spelling), '/')
	return !isWord(plain(next)) && !(division && next == '(') // 2 ft/min(a, b) divides by the function
}

// inAsOperator tells whether the "in" that stands here, behind a number, is the
// operator: then a list follows it.
func (s *scanner) inAsOperator() bool {
	i := 2
	for isSpace(s.peek(i)) {
		i++
	}
	switch r := s.peek(i); {
	case r == '[' || r == '(' || r == '#' || r == '.' || r == '\'' || r == '"' || r == '`' || isDigit(r):
		return true
	case !isWord(r):
		return false
	}
	from := i
	for isWord(s.peek(i)) {
		i++
	}
	return !isOperator(s.part(s.next+from, s.next+i))
}

// keep notes a quantity and puts a name of the same length in its place.
func (s *scanner) keep(at span, text string) *Error {
	value, err := quantity.Parse(text)
	if err != nil {
		return &Error{Offset: at.from, Length: at.to - at.from, Message: err.Error()}
	}
	if at.from > 0 && isWord(s.at(at.from-1)) { // the name in its place would join the word
		return &Error{Offset: at.from, Length: at.to - at.from, Message: fmt.Sprintf("expected a blank before %q", s.text(at))}
	}
	s.literals = append(s.literals, quantityAt{at, value})
	s.operand = true
	return nil
}

// plain reads a superscript as the digit.
func plain(r rune) rune {
	switch r {
	case '²':
		return '2'
	case '³':
		return '3'
	}
	return r
}
