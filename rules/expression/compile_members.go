package expression

import (
	"fmt"
	"reflect"

	"github.com/expr-lang/expr/ast"
)

// member settles `of.key`, `limit.name` and `list[0]`.
func (c *compiler) member(n *ast.MemberNode) term {
	at := place(n.Location())
	if id, ok := n.Node.(*ast.IdentifierNode); ok && (id.Value == "limit" || id.Value == "table") {
		if key, ok := n.Property.(*ast.StringNode); ok {
			c.notLiteral(place(key.Location()))
			return c.packMember(id.Value, key.Value, place(id.Location()).with(at))
		}
	}
	if _, ok := n.Property.(*ast.StringNode); ok {
		c.notLiteral(place(n.Property.Location()))
	}
	of := c.term(n.Node)
	switch property := n.Property.(type) {
	case *ast.StringNode:
		return c.field(of, property)
	case *ast.IntegerNode:
		return c.index(of, property)
	}
	return c.fail(c.around(at, of), "", "expected a key such as .id or a whole number such as [0]")
}

// packMember settles limit.name; a table must be called.
func (c *compiler) packMember(of, name string, at span) term {
	if of == "table" {
		c.fail(at, "", "table.%s needs its inputs, expected them in parentheses", name)
	}
	content, ok := c.names.Limits[name]
	if !ok {
		c.fail(at, near(name, sortedKeys(c.names.Limits)), "unknown limit %q", name)
	}
	if content == nil {
		return &limit{part{at, unsetShape}, nil, unsetLimit(name)}
	}
	kind, convert, ok := shapeOf(reflect.TypeOf(content))
	if !ok {
		c.fail(at, "", "limit %q has type %T, which expressions cannot hold", name, content)
	}
	return &limit{part: part{at, kind}, content: convert(reflect.ValueOf(content))}
}

// field settles a key of a thing.
func (c *compiler) field(of term, key *ast.StringNode) term {
	at, kind := place(key.Location()), of.shape()
	switch kind.class {
	case thingClass:
	case listClass:
		c.fail(at, fmt.Sprintf("ask for its elements, such as all(%s, .%s ...)", c.source.text(of.span()), key.Value),
			"%s is a list, which has no key %q", c.quote(of.span()), key.Value)
	default:
		c.fail(at, "", "%s is %v, which has no key %q", c.quote(of.span()), kind, key.Value)
	}
	s := structureOf(kind.goType)
	m := s.members[key.Value]
	if m == nil {
		c.fail(at, near(key.Value, s.keys), "%v has no key %q", kind, key.Value)
	}
	return &field{part{c.around(at, of), m.shape}, of, m}
}

// index settles the choice of one element of a list.
func (c *compiler) index(of term, n *ast.IntegerNode) term {
	at := c.around(place(n.Location()), of)
	if of.shape().class != listClass {
		c.fail(at, "", "%s is %v, expected a list", c.quote(of.span()), of.shape())
	}
	i := n.Value
	choose := &operation{name: "element", result: *of.shape().elem, computes: true, call: func(args ...any) (any, error) {
		if i >= length(args[0]) {
			return nil, &Undetermined{"no such element"}
		}
		return element(args[0], i), nil
	}}
	return &application{part: part{at, choose.result}, operation: choose, arguments: []term{of}}
}
