package expression

import (
	"fmt"

	"github.com/expr-lang/expr/ast"
)

// call settles a call with plain arguments.
func (c *compiler) call(n *ast.CallNode) term {
	c.notLiteral(place(n.Location()))
	at := c.source.called(place(n.Location()))
	if member, ok := n.Callee.(*ast.MemberNode); ok {
		return c.memberCall(member, at, n.Arguments)
	}
	switch name := n.Callee.(*ast.IdentifierNode).Value; name {
	case "known":
		return c.known(at, n.Arguments)
	case "min", "max", "abs", "mean", "round", "floor", "ceil", "len", "first", "last":
		return c.builtin(name, at, n.Arguments)
	default:
		return c.function(name, at, n.Arguments)
	}
}

// memberCall settles table.name(inputs), the only key that can be called.
func (c *compiler) memberCall(callee *ast.MemberNode, at span, arguments []ast.Node) term {
	of, isName := callee.Node.(*ast.IdentifierNode)
	name, isKey := callee.Property.(*ast.StringNode)
	if isName && isKey && of.Value == "table" {
		return c.table(name.Value, place(of.Location()).with(at), arguments)
	}
	return c.fail(at, "", "a key cannot be called, expected a function such as distance(a, b)")
}

func (c *compiler) terms(nodes []ast.Node) []term {
	list := make([]term, len(nodes))
	for i, n := range nodes {
		list[i] = c.term(n)
	}
	return list
}

// function settles a call of a function of the vocabulary.
func (c *compiler) function(name string, at span, arguments []ast.Node) term {
	f := c.language.functions[name]
	if f == nil {
		c.fail(at, near(name, append(sortedKeys(c.language.functions), ownFunctions...)), "unknown function %q", name)
	}
	args := c.terms(arguments)
	if len(args) != len(f.takes) {
		c.fail(at, "", "%s takes %d arguments, found %d: %s", name, len(f.takes), len(args), f.signature)
	}
	for i, arg := range args {
		if !accepts(f.takes[i], arg.shape()) {
			c.fail(arg.span(), "", "%s is %v, which %s does not take: %s", c.quote(arg.span()), arg.shape(), name, f.signature)
		}
		c.checkWordOf(f.takes[i], name, arg)
	}
	return &application{part: part{at, f.operation.result}, operation: f.operation, arguments: args, function: f}
}

// table settles a look-up in a table of the pack.
func (c *compiler) table(name string, at span, arguments []ast.Node) term {
	t, ok := c.names.Tables[name]
	if !ok {
		c.fail(at, near(name, sortedKeys(c.names.Tables)), "unknown table %q", name)
	}
	op, ok := lookUp("table "+name, t)
	if !ok {
		c.fail(at, "", "table %q holds %v, which expressions cannot hold", name, t.Result())
	}
	args, inputs := c.terms(arguments), t.Inputs()
	if len(args) != len(inputs) {
		c.fail(at, "", "table.%s takes %d inputs, found %d", name, len(inputs), len(args))
	}
	for i, arg := range args {
		if !accepts(inputs[i], arg.shape()) {
			wanted, _, _ := shapeOf(inputs[i])
			c.fail(arg.span(), "", "%s is %v, expected %v as input %d of table.%s", c.quote(arg.span()), arg.shape(), wanted, i+1, name)
		}
	}
	return &application{part: part{at, op.result}, operation: op, arguments: args}
}

// known settles known(key).
func (c *compiler) known(at span, arguments []ast.Node) term {
	args := c.terms(arguments)
	if len(args) != 1 {
		c.fail(at, "", "known takes one key, such as known(opening.flow)")
	}
	chain, ok := chainOf(args[0])
	if !ok {
		c.fail(args[0].span(), "", "%s always has a value, known expected a key that a design may leave out", c.quote(args[0].span()))
	}
	return &knownTest{part{at, truthShape}, chain}
}

// builtin settles a function of the language itself.
func (c *compiler) builtin(name string, at span, arguments []ast.Node) term {
	args := c.terms(arguments)
	switch {
	case name == "len", name == "first", name == "last":
		return c.ofList(name, at, args)
	case len(args) == 0:
		c.fail(at, "", "%s takes at least one argument", name)
	case name == "mean", (name == "min" || name == "max") && args[0].shape().class == listClass:
		return c.folded(name, at, args)
	}
	if len(args) > 1 && name != "min" && name != "max" {
		c.fail(at, "", "%s takes one argument, found %d", name, len(args))
	}
	kind := args[0].shape()
	for _, arg := range args[1:] {
		kind = merged(kind, arg.shape())
	}
	for i, arg := range args {
		if !arg.shape().is(kind) {
			c.fail(arg.span(), "", "%s is %v, %s expected %v like its other arguments", c.quote(args[i].span()), arg.shape(), name, kind)
		}
	}
	return c.applied(name, name, at, kind, args)
}

// applied finds the operation of a name on values of one shape.
func (c *compiler) applied(name, key string, at span, kind shape, args []term) term {
	if kind.class == unsetClass {
		return &application{part: part{at, unsetShape}, operation: neverDone, arguments: args}
	}
	op := theCalculus().folds[foldKey{key, kind.goType}]
	if op == nil {
		c.fail(at, "", "%s does not take %v", name, kind)
	}
	return &application{part: part{at, op.result}, operation: op, arguments: args}
}

// folded settles a function of the elements of one list.
func (c *compiler) folded(name string, at span, args []term) term {
	if len(args) != 1 || args[0].shape().class != listClass {
		c.fail(at, fmt.Sprintf("make a list with %s(map(list, .key))", name), "%s takes one list of numbers or quantities", name)
	}
	return c.applied(name, name+ofList, at, *args[0].shape().elem, args)
}

// ofList settles len, first and last.
func (c *compiler) ofList(name string, at span, args []term) term {
	if len(args) != 1 || args[0].shape().class != listClass {
		c.fail(at, "", "%s takes one list", name)
	}
	op := &operation{name: name, result: numberShape, computes: true}
	if name == "len" {
		op.call = func(args ...any) (any, error) { return float64(length(args[0])), nil }
		return &application{part: part{at, op.result}, operation: op, arguments: args}
	}
	op.result = *args[0].shape().elem
	op.call = func(args ...any) (any, error) {
		n := length(args[0])
		switch {
		case n == 0:
			return nil, &Undetermined{"no element"}
		case name == "first":
			return element(args[0], 0), nil
		}
		return element(args[0], n-1), nil
	}
	return &application{part: part{at, op.result}, operation: op, arguments: args}
}

// loop settles a function with a condition or value for each element.
func (c *compiler) loop(n *ast.BuiltinNode) term {
	at := c.source.called(place(n.Location()))
	switch n.Name {
	case "all", "any", "none", "one", "count", "filter", "map", "sum":
	default:
		c.fail(at, "", "%s is not part of the language", n.Name)
	}
	list := c.term(n.Arguments[0])
	if list.shape().class != listClass {
		c.fail(list.span(), "", "%s is %v, %s expected a list", c.quote(list.span()), list.shape(), n.Name)
	}
	if len(n.Arguments) == 1 {
		if n.Name == "count" {
			c.fail(at, "write len(list), or count(list, condition)", "count takes a list and a condition")
		}
		return c.folded(n.Name, at, []term{list})
	}
	t := &loop{name: n.Name, list: list, depth: len(c.loops)}
	c.loops = append(c.loops, *list.shape().elem)
	t.body = c.term(n.Arguments[1].(*ast.PredicateNode).Node)
	c.loops = c.loops[:t.depth]
	return c.looped(t, at)
}

// looped checks the body of a loop and gives the loop its shape.
func (c *compiler) looped(t *loop, at span) term {
	switch t.name {
	case "sum":
		t.name, t.part = "map", part{at, listOf(t.body.shape())}
		return c.folded("sum", at, []term{t})
	case "map":
		t.part = part{at, listOf(t.body.shape())}
		return t
	}
	c.condition(t.body, t.name)
	switch t.name {
	case "count":
		t.part = part{at, numberShape}
	case "filter":
		t.part = part{at, listOf(*t.list.shape().elem)}
	default:
		t.part = part{at, truthShape}
	}
	return t
}
