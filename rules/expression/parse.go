package expression

import (
	"errors"
	"fmt"
	"strings"
	"sync"
	"unicode"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/builtin"
	"github.com/expr-lang/expr/conf"
	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser"
)

const maxNodes = 400

// grammar is the parser's configuration: none of its functions but those with
// a predicate, which are vetted by name later.
var grammar = sync.OnceValue(func() *conf.Config {
	c := conf.CreateNew()
	c.MaxNodes = maxNodes
	c.DisableIfOperator = true
	for _, f := range builtin.Builtins {
		c.Disabled[f.Name] = true
	}
	return c
})

// parse reads the source into a syntax tree, not yet checked in any way.
func parse(s *source) (ast.Node, *Error) {
	code := s.code()
	if strings.TrimSpace(code) == "" {
		return nil, &Error{Length: 1, Message: "the expression is empty"}
	}
	tree, failed := parser.ParseWithConfig(code, grammar())
	if failed != nil {
		return nil, s.syntaxError(failed)
	}
	return tree.Node, nil
}

// syntaxError says what the parser did not expect, as it is written.
func (s *source) syntaxError(failed error) *Error {
	var at *file.Error
	if !errors.As(failed, &at) {
		return &Error{Length: 1, Message: failed.Error()}
	}
	e := &Error{Offset: min(at.From, max(s.size()-1, 0)), Length: max(at.To-at.From, 1)}
	switch {
	case strings.Contains(at.Message, "maximum allowed nodes"):
		e.Message = fmt.Sprintf("the expression has more than %d parts", maxNodes)
		e.Hint = "split the rule"
	case strings.HasPrefix(at.Message, "unexpected token EOF"), strings.HasPrefix(at.Message, "unexpected end"):
		e.Message = "the expression ends too early"
	case strings.Contains(at.Message, "coalesce expressions"):
		e.Message = `"??" stands beside another operator, expected parentheses around "a ?? b"`
	case strings.HasPrefix(at.Message, "unexpected token"):
		e.Message = fmt.Sprintf("unexpected %q", s.text(span{at.From, at.To}))
	default:
		e.Message = plainMessage(at.Message)
	}
	return e
}

// plainMessage brings a message of the parser to the form of all others.
func plainMessage(text string) string {
	runes := []rune(strings.TrimRight(text, "."))
	if len(runes) > 0 {
		runes[0] = unicode.ToLower(runes[0])
	}
	return string(runes)
}
