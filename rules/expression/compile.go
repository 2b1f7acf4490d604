package expression

import (
	"fmt"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/file"
)

// compiled is a checked expression.
type compiled struct {
	*source
	root     term
	label    func(thing any) string // may be nil
	subjects bool                   // it names one
	sized    bool                   // it compares figures by size
}

// compiler settles the names and types of one expression. It stops at the first
// mistake by panicking with it.
type compiler struct {
	language *Language
	names    Names
	source   *source
	loops    []shape    // of the elements of the loops around
	lets     []*binding // around
	slots    int
	subjects bool // one was named
	sized    bool // figures were compared by size
}

// compile checks an expression.
func (l *Language) compile(text string, n Names) (c *compiled, err error) {
	for _, v := range n.Variables {
		if err := l.CheckName(v.Name); err != nil {
			return nil, &Error{Length: 1, Message: err.Error()}
		}
	}
	src, mistake := scan(text)
	if mistake != nil {
		return nil, mistake
	}
	defer func() {
		if p := recover(); p != nil {
			c, err = nil, mistakeOf(p)
		}
	}()
	node, mistake := parse(src)
	if mistake != nil {
		return nil, mistake
	}
	check := &compiler{language: l, names: n, source: src}
	root := check.term(node)
	return &compiled{src, root, l.label, check.subjects, check.sized}, nil
}

// mistakeOf reads what a compilation panicked with; anything but a mistake is a
// defect of the parser or of a vocabulary, and no reason to stop the program.
func mistakeOf(panicked any) *Error {
	if mistake, ok := panicked.(*Error); ok {
		return mistake
	}
	return &Error{Length: 1, Message: fmt.Sprintf("the expression cannot be compiled: %v", panicked)}
}

// fail reports a mistake. It never returns; its result lets callers end with it.
func (c *compiler) fail(at span, hint, format string, args ...any) term {
	panic(&Error{Offset: at.from, Length: max(at.to-at.from, 1), Message: fmt.Sprintf(format, args...), Hint: hint})
}

// quote gives a part of the text for a message.
func (c *compiler) quote(at span) string { return fmt.Sprintf("%q", c.source.text(at)) }

func place(l file.Location) span { return span{l.From, l.To} }

// around gives the part of the text that covers all the given ones.
func (c *compiler) around(at span, terms ...term) span {
	for _, t := range terms {
		at = at.with(t.span())
	}
	return c.source.balanced(at)
}

// term settles a node. Nodes that are not listed are not part of the language.
func (c *compiler) term(node ast.Node) term {
	at := place(node.Location())
	switch n := node.(type) {
	case *ast.BoolNode:
		return &literal{part{at, truthShape}, n.Value}
	case *ast.IntegerNode:
		return &literal{part{at, numberShape}, float64(n.Value)}
	case *ast.FloatNode:
		return &literal{part{at, numberShape}, n.Value}
	case *ast.StringNode:
		return c.text(n)
	case *ast.IdentifierNode:
		return c.name(n)
	case *ast.MemberNode:
		return c.member(n)
	case *ast.PointerNode:
		return c.element(n)
	case *ast.UnaryNode:
		return c.unary(n)
	case *ast.BinaryNode:
		return c.binary(n)
	case *ast.ConditionalNode:
		return c.choice(n)
	case *ast.ArrayNode:
		return c.array(n)
	case *ast.CallNode:
		return c.call(n)
	case *ast.BuiltinNode:
		return c.loop(n)
	case *ast.VariableDeclaratorNode:
		return c.let(n)
	}
	return c.refuse(node)
}

// refuse names what the parser knows and the language does not.
func (c *compiler) refuse(node ast.Node) term {
	at := c.source.balanced(place(node.Location()))
	switch node.(type) {
	case *ast.NilNode:
		c.fail(at, "ask with known(...), or give another value with ??", `"nil" is not part of the language`)
	case *ast.ChainNode:
		c.fail(at, "ask with known(...), or give another value with ??", `"?." is not part of the language`)
	case *ast.SliceNode:
		c.fail(at, "", "a part of a list cannot be taken, expected one element such as [0]")
	case *ast.MapNode:
		c.fail(at, "", "a map in braces is not part of the language")
	case *ast.SequenceNode:
		c.fail(at, `";" stands only behind let`, "found several expressions, expected one")
	}
	return c.fail(at, "", "unexpected %s", c.quote(at))
}

const maxText = 256 // bytes

func (c *compiler) text(n *ast.StringNode) term {
	at := place(n.Location())
	if len(n.Value) > maxText {
		c.fail(at, "", "a text is longer than %d bytes", maxText)
	}
	kind := textShape
	kind.words = &wordList{words: []string{n.Value}, written: true}
	return &literal{part{at, kind}, n.Value}
}

// mistake makes an error about a whole term.
func (c *compiled) mistake(t term, hint, message string) *Error {
	at := t.span()
	return &Error{Offset: at.from, Length: max(at.to-at.from, 1), Message: message, Hint: hint}
}
