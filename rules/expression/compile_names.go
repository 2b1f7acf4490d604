package expression

import (
	"reflect"
	"slices"

	"github.com/expr-lang/expr/ast"
)

// ownFunctions are the functions of the language itself.
var ownFunctions = []string{"known", "all", "any", "none", "one", "count", "filter", "map", "sum",
	"min", "max", "abs", "mean", "round", "floor", "ceil", "len", "first", "last"}

// keywords belong to the language or to its parser.
var keywords = []string{"limit", "table", "true", "false", "nil", "and", "or", "not", "in", "let", "if", "else",
	"contains", "matches", "find", "reduce"}

// reserved names cannot be given to anything else.
var reserved = func() map[string]bool {
	names := map[string]bool{}
	for _, name := range slices.Concat(ownFunctions, keywords) {
		names[name] = true
	}
	return names
}()

// name settles a name that stands by itself.
func (c *compiler) name(n *ast.IdentifierNode) term {
	at := place(n.Location())
	if v, ok := c.source.literal(at.from); ok {
		kind, _, _ := shapeOf(reflect.TypeOf(v))
		return &literal{part{at, kind}, v}
	}
	for i := len(c.lets) - 1; i >= 0; i-- {
		if b := c.lets[i]; b.name == n.Value {
			return &variable{part{at, b.definition.shape()}, b}
		}
	}
	for i, v := range c.names.Variables {
		if v.Name == n.Value {
			return c.subject(at, i, v)
		}
	}
	if r := c.language.roots[n.Value]; r != nil {
		return &root{part{at, r.shape}, r.get, r.need}
	}
	return c.unknownName(n.Value, at)
}

// notLiteral refuses a quantity where a name belongs: to the parser it is one.
func (c *compiler) notLiteral(at span) {
	if _, ok := c.source.literal(at.from); ok {
		c.fail(at, "", "unexpected %s, expected a name", c.quote(at))
	}
}

// subject settles a variable of the rule.
func (c *compiler) subject(at span, index int, v Variable) term {
	kind, _, ok := shapeOf(v.Type)
	if !ok {
		c.fail(at, "", "%q has type %v, which expressions cannot hold", v.Name, v.Type)
	}
	c.subjects = true
	return &subject{part{at, kind}, index}
}

func (c *compiler) unknownName(name string, at span) term {
	switch {
	case name == "limit":
		c.fail(at, "", `found "limit" alone, expected the name of a limit such as limit.height`)
	case name == "table":
		c.fail(at, "", `found "table" alone, expected a table and its inputs such as table.length(a, b)`)
	case c.language.functions[name] != nil:
		c.fail(at, "", "%q is a function, expected its arguments: %s", name, c.language.functions[name].signature)
	}
	names := sortedKeys(c.language.roots)
	for _, v := range c.names.Variables {
		names = append(names, v.Name)
	}
	for _, b := range c.lets {
		names = append(names, b.name)
	}
	return c.fail(at, near(name, names), "unknown name %q", name)
}

// let settles `let name = definition; body`.
func (c *compiler) let(n *ast.VariableDeclaratorNode) term {
	at := place(n.Location())
	c.notLiteral(at)
	if err := c.language.CheckName(n.Name); err != nil {
		c.fail(at, "", "%v", err)
	}
	for _, v := range c.names.Variables {
		c.taken(v.Name, n.Name, at)
	}
	for _, b := range c.lets {
		c.taken(b.name, n.Name, at)
	}
	b := &binding{name: n.Name, slot: c.slots, depth: len(c.loops)}
	c.slots++
	b.definition = c.term(n.Value)
	c.lets = append(c.lets, b)
	b.body = c.term(n.Expr)
	c.lets = c.lets[:len(c.lets)-1]
	b.part = part{c.around(at, b.definition, b.body), b.body.shape()}
	return b
}

func (c *compiler) taken(name, wanted string, at span) {
	if name == wanted {
		c.fail(at, "", "%q means something already, expected another name", wanted)
	}
}

// element settles `#`, and the one that `.key` leaves out.
func (c *compiler) element(n *ast.PointerNode) term {
	at := place(n.Location())
	if n.Name != "" {
		c.fail(at, "a key of the element is #.key, or .key for short", `found "#" with a name, expected it alone`)
	}
	depth := len(c.loops) - 1
	return &elementTerm{part{at, c.loops[depth]}, depth}
}
