package expression

import (
	"fmt"
	"reflect"

	"github.com/expr-lang/expr/ast"

	"github.com/ventlint/ventlint/checker/quantity"
)

// unary settles `not x` and `-x`.
func (c *compiler) unary(n *ast.UnaryNode) term {
	of := c.term(n.Node)
	at := c.around(place(n.Location()), of)
	switch n.Operator {
	case "not", "!":
		if b, ok := n.Node.(*ast.BinaryNode); ok && n.Location() == b.Location() {
			at = of.span() // "x not in y": both nodes stand at the operator
		}
		c.condition(of, "not")
		return &negation{part{at, truthShape}, of}
	case "-":
		kind := of.shape()
		if kind.class == unsetClass {
			return of
		}
		op := theCalculus().folds[foldKey{"-", kind.goType}]
		if op == nil {
			c.fail(at, "", "%s is %v, which has no negative", c.quote(of.span()), kind)
		}
		return &application{part: part{at, op.result}, operation: op, arguments: []term{of}}
	}
	return c.fail(at, "", "unexpected %q", n.Operator)
}

// condition demands something that is true or false.
func (c *compiler) condition(t term, of string) {
	if !t.shape().is(truthShape) {
		hint := ""
		if of == "not" {
			hint = "write not (...) around a comparison"
		}
		c.fail(t.span(), hint, "%s is %v, %q expected a condition that is true or false", c.quote(t.span()), t.shape(), of)
	}
}

// binary settles an operator between two terms.
func (c *compiler) binary(n *ast.BinaryNode) term {
	c.refuseChain(n)
	if n.Operator == "??" {
		return c.fallback(n)
	}
	left, right := c.term(n.Left), c.term(n.Right)
	at := c.around(place(n.Location()), left, right)
	switch n.Operator {
	case "and", "&&", "or", "||":
		c.condition(left, n.Operator)
		c.condition(right, n.Operator)
		decides := False
		if n.Operator == "or" || n.Operator == "||" {
			decides = True
		}
		return &junction{part{at, truthShape}, decides, [2]term{left, right}}
	case "<", "<=", ">", ">=", "==", "!=", "in", "contains", "startsWith", "endsWith":
		t := &comparison{part: part{at, truthShape}, symbol: n.Operator, sign: place(n.Location()), left: left, right: right}
		t.operation = c.comparing(n.Operator, at, left, right)
		c.sized = c.sized || t.sized()
		return t
	case "+", "-", "*", "/":
		return c.calculated(n.Operator, at, left, right)
	}
	return c.fail(place(n.Location()), "", "operator %q is not part of the language", n.Operator)
}

// refuseChain refuses `a < b < c`: the parser shares the part in the middle, and
// what it costs would double with each level.
func (c *compiler) refuseChain(n *ast.BinaryNode) {
	right, ok := n.Right.(*ast.BinaryNode)
	if ok && n.Operator == "&&" && endsWith(n.Left, right.Left) {
		c.fail(place(right.Location()), "write a < b and b < c", "comparisons cannot be chained")
	}
}

// endsWith tells whether the last operand of a tree is a certain node itself.
func endsWith(tree, operand ast.Node) bool {
	b, ok := tree.(*ast.BinaryNode)
	return ok && (b.Right == operand || b.Operator == "&&" && endsWith(b.Right, operand))
}

var verbs = map[string]string{"+": "added", "-": "subtracted", "*": "multiplied", "/": "divided"}

// calculated settles arithmetic.
func (c *compiler) calculated(symbol string, at span, left, right term) term {
	a, b := left.shape(), right.shape()
	if a.class == unsetClass || b.class == unsetClass {
		return &application{part: part{at, unsetShape}, operation: neverDone, arguments: []term{left, right}}
	}
	if a.class == textClass || b.class == textClass {
		c.fail(at, "put the parts into a message: {first} {second}", "text cannot be %s", verbs[symbol])
	}
	op := theCalculus().binary[operatorKey{symbol, a.goType, b.goType}]
	if symbol == "+" || symbol == "-" {
		c.refuseBare(op, left, right)
	}
	if op == nil {
		c.fail(at, "", "%s is %v and %s is %v: they cannot be %s", c.quote(left.span()), a, c.quote(right.span()), b, verbs[symbol])
	}
	return &application{part: part{at, op.result}, operation: op, arguments: []term{left, right}}
}

// neverDone stands for operations on a limit that is not set: its value is
// unknown before they are reached.
var neverDone = &operation{name: "nothing", result: unsetShape, call: func(...any) (any, error) {
	return nil, &Undetermined{"a limit is not set"}
}}

// refuseBare refuses a plain number that is written where a quantity belongs.
// A ratio is a quantity here: 65 may have lost its % sign.
func (c *compiler) refuseBare(op *operation, left, right term) {
	for _, pair := range [][2]term{{left, right}, {right, left}} {
		number, other := pair[0], pair[1]
		if number.shape().class == numberClass && other.shape().class == quantityClass && (op == nil || constant(number)) {
			c.fail(number.span(), percentHint(number, other), "%s is a plain number and %s is %v, expected a quantity %s",
				c.quote(number.span()), c.quote(other.span()), other.shape(), other.shape().example())
		}
	}
}

// percentHint writes a number as the ratio that may have been meant.
func percentHint(number, other term) string {
	n, ok := number.(*literal)
	if !ok || other.shape().goType != reflect.TypeFor[quantity.Ratio]() {
		return ""
	}
	return fmt.Sprintf("%v as a ratio is %v %%", n.content, 100*n.content.(float64))
}

// fallback settles `key ?? other`; in `a ?? b ?? c`, b is a key as well.
func (c *compiler) fallback(n *ast.BinaryNode) term {
	left, right := c.term(n.Left), c.term(n.Right)
	var chains []chain
	last := left
	if before, ok := left.(*fallback); ok {
		chains, last = before.chains, before.other
	}
	next, ok := chainOf(last)
	if !ok {
		c.fail(last.span(), "", `%s always has a value, "??" expected a key that a design may leave out`, c.quote(last.span()))
	}
	kind := c.common("??", left, right)
	return &fallback{part{c.around(place(n.Location()), left, right), kind}, append(chains, next), right}
}

// choice settles `condition ? yes : no`.
func (c *compiler) choice(n *ast.ConditionalNode) term {
	if n.Cond == n.Exp1 {
		c.fail(place(n.Location()), "", `"?:" needs a value between its signs`)
	}
	condition := c.term(n.Cond)
	c.condition(condition, "?")
	yes, no := c.term(n.Exp1), c.term(n.Exp2)
	return &choice{part{c.around(condition.span(), yes, no), c.common("?:", yes, no)}, condition, yes, no}
}

// common gives the shape that two alternatives share.
func (c *compiler) common(symbol string, a, b term) shape {
	kind, other := a.shape(), b.shape()
	if !kind.is(other) {
		c.fail(b.span(), "", "%s is %v and %s is %v, %q expected both to be the same", c.quote(a.span()), kind, c.quote(b.span()), other, symbol)
	}
	return merged(kind, other)
}

// merged is the shape of a value that has one shape or the other.
func merged(a, b shape) shape {
	if a.class == unsetClass {
		return b
	}
	if a.class == listClass && b.class == listClass {
		return listOf(merged(*a.elem, *b.elem))
	}
	if a.words == nil || b.words == nil {
		a.words = nil
		return a
	}
	a.words = &wordList{append(append([]string(nil), a.words.words...), b.words.words...), a.words.written && b.words.written}
	return a
}

// array settles a list that is written out.
func (c *compiler) array(n *ast.ArrayNode) term {
	at := c.source.balanced(place(n.Location()))
	if len(n.Nodes) == 0 {
		c.fail(at, "", "the list is empty")
	}
	var elements []term
	var kind shape
	for i, node := range n.Nodes {
		t := c.term(node)
		if i == 0 {
			kind = t.shape()
		} else {
			kind = c.common(fmt.Sprintf("list element %d", i+1), elements[0], t)
		}
		elements = append(elements, t)
	}
	return newArray(part{at, listOf(kind)}, elements)
}
