package expression

import (
	"fmt"
	"strings"
	"sync"

	"github.com/ventlint/ventlint/checker/quantity"
)

// Template is a compiled message with expressions in braces.
type Template struct {
	language *Language
	text     string
	names    Names

	once sync.Once
	list []piece
	err  error
}

// piece is some text, and the expression behind it; the last one has none.
type piece struct {
	before     string
	expression *compiled
}

// Template compiles a message such as "{intake.id} is {distance(intake, exhaust)} away";
// {{ and }} are single braces. The error is an *Error with offsets in the message.
func (l *Language) Template(text string, n Names) (*Template, error) {
	t := l.KnownTemplate(text, n)
	if _, err := t.pieces(); err != nil {
		return nil, err
	}
	return t, nil
}

// KnownTemplate is Template for a text that is known to compile: it is compiled
// when it is first printed. A mistake in it after all is what it prints.
func (l *Language) KnownTemplate(text string, n Names) *Template {
	return &Template{language: l, text: text, names: n}
}

// pieces compiles the message at the first call.
func (t *Template) pieces() ([]piece, error) {
	t.once.Do(func() { t.list, t.err = t.language.pieces(t.text, t.names) })
	return t.list, t.err
}

func (l *Language) pieces(text string, n Names) ([]piece, error) {
	if len(text) > maxSource {
		return nil, &Error{Length: 1, Message: "the message is longer than 4096 bytes"}
	}
	reader := &templateReader{language: l, names: n, text: []rune(text)}
	for reader.at < len(reader.text) {
		if err := reader.next(); err != nil {
			return nil, err
		}
	}
	return append(reader.pieces, piece{before: reader.literal.String()}), nil
}

// Text prints the message in a unit system. What is not known is named in
// parentheses.
func (t *Template) Text(s *Scope, system quantity.System) string {
	pieces, err := t.pieces()
	if err != nil {
		return fmt.Sprintf("(%v)", err)
	}
	var b strings.Builder
	for _, p := range pieces {
		b.WriteString(p.before)
		if p.expression != nil {
			b.WriteString(p.expression.print(s, system))
		}
	}
	return b.String()
}

func (c *compiled) print(s *Scope, system quantity.System) string {
	r, err := s.begin(c)
	if err != nil {
		return fmt.Sprintf("(%v)", err)
	}
	var v result
	if err := r.guarded(func() { v = c.root.value(r) }); err != nil {
		return fmt.Sprintf("(%v)", err)
	}
	if v.lacks == nil {
		return quantity.Format(v.value, system)
	}
	if missing, _ := listed(v.lacks); len(missing) > 0 {
		return "(not given: " + strings.TrimPrefix(v.err().Error(), "needs ") + ")"
	}
	return "(undetermined: " + v.err().Error() + ")"
}

// templateReader takes a message apart.
type templateReader struct {
	language *Language
	names    Names
	text     []rune
	at       int
	literal  strings.Builder
	pieces   []piece
}

// next takes one character, or one expression.
func (t *templateReader) next() error {
	r := t.text[t.at]
	switch {
	case (r == '{' || r == '}') && t.at+1 < len(t.text) && t.text[t.at+1] == r:
		t.literal.WriteRune(r)
		t.at += 2
		return nil
	case r == '}':
		return &Error{Offset: t.at, Length: 1, Message: `found "}" without "{"`, Hint: `write "}}" for a brace in the text`}
	case r == '{':
		return t.expression()
	}
	t.literal.WriteRune(r)
	t.at++
	return nil
}

// expression compiles what stands between two braces.
func (t *templateReader) expression() error {
	from := t.at + 1
	to := t.closing(from)
	if to < 0 {
		return &Error{Offset: t.at, Length: 1, Message: `found "{" without "}"`, Hint: `write "{{" for a brace in the text`}
	}
	c, err := t.language.compile(string(t.text[from:to]), t.names)
	if err == nil {
		err = c.printable()
	}
	if mistake, ok := err.(*Error); ok {
		mistake.Offset += from
		return mistake
	}
	t.pieces = append(t.pieces, piece{t.literal.String(), c})
	t.literal.Reset()
	t.at = to + 1
	return nil
}

// closing finds the brace that ends an expression: not one in a text, nor one
// of a pair inside.
func (t *templateReader) closing(from int) int {
	var quote rune
	depth := 0
	for i := from; i < len(t.text); i++ {
		switch r := t.text[i]; {
		case quote != 0 && r == '\\' && quote != '`':
			i++
		case quote != 0:
			if r == quote {
				quote = 0
			}
		case r == '\'' || r == '"' || r == '`':
			quote = r
		case r == '{':
			depth++
		case r == '}' && depth == 0:
			return i
		case r == '}':
			depth--
		}
	}
	return -1
}

// printable refuses what has no text.
func (c *compiled) printable() error {
	switch kind := c.root.shape(); kind.class {
	case thingClass, listClass:
		return c.mistake(c.root, "name a key of it, such as .id", fmt.Sprintf("%q is %v, which cannot be printed", c.text(c.root.span()), kind))
	}
	return nil
}
