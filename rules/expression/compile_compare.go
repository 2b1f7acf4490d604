package expression

import (
	"cmp"
	"reflect"
	"slices"
	"strings"
)

// comparing finds the operation of a comparison.
func (c *compiler) comparing(symbol string, at span, left, right term) *operation {
	a, b := left.shape(), right.shape()
	if symbol == "in" {
		return c.membership(left, right)
	}
	if a.class == unsetClass || b.class == unsetClass {
		return &operation{name: symbol, result: truthShape, call: neverDone.call}
	}
	if test, ok := textTests[symbol]; ok {
		c.demandText(left, symbol)
		c.demandText(right, symbol)
		return &operation{name: symbol, result: truthShape, call: func(args ...any) (any, error) {
			return test(args[0].(string), args[1].(string)), nil
		}}
	}
	if a.ordered() || b.ordered() {
		op := theCalculus().binary[operatorKey{symbol, a.goType, b.goType}]
		c.refuseBare(op, left, right)
		if op != nil {
			return op
		}
	}
	if !a.is(b) {
		c.mismatch(left, right)
	}
	if symbol != "==" && symbol != "!=" || a.class == listClass {
		c.fail(at, "", "%s is %v: %q expected numbers or quantities", c.quote(left.span()), a, symbol)
	}
	c.checkWords(left, right)
	if symbol == "==" {
		return equals
	}
	return differs
}

func (c *compiler) mismatch(left, right term) {
	hint := ""
	if left.shape().class == textClass || right.shape().class == textClass {
		hint = "quantities stand without quotes: 10 ft"
	}
	c.fail(left.span().with(right.span()), hint, "%s is %v and %s is %v: they cannot be compared",
		c.quote(left.span()), left.shape(), c.quote(right.span()), right.shape())
}

func (c *compiler) demandText(t term, symbol string) {
	if !t.shape().is(textShape) {
		c.fail(t.span(), "", "%s is %v, %q expected text", c.quote(t.span()), t.shape(), symbol)
	}
}

// membership settles `x in list`.
func (c *compiler) membership(left, right term) *operation {
	a, list := left.shape(), right.shape()
	if a.class == unsetClass || list.class == unsetClass {
		return &operation{name: "in", result: truthShape, call: neverDone.call}
	}
	if list.class != listClass {
		c.fail(right.span(), "", `%s is %v, "in" expected a list such as ["a", "b"]`, c.quote(right.span()), list)
	}
	if !a.is(*list.elem) || a.class == listClass {
		c.fail(left.span().with(right.span()), "", "%s is %v and %s holds %v: it cannot be in that list",
			c.quote(left.span()), a, c.quote(right.span()), *list.elem)
	}
	if written, ok := right.(*array); ok {
		for _, e := range written.elements {
			c.checkWords(left, e)
		}
	} else {
		c.checkWords(left, &literal{part: part{right.span(), *list.elem}})
	}
	return membership(a)
}

// checkWords refuses a comparison of texts that can never be the same: a
// misspelled word would make a rule pass in silence.
func (c *compiler) checkWords(left, right term) {
	a, b := left.shape().words, right.shape().words
	if a == nil || b == nil {
		return
	}
	if a.written {
		left, right, a, b = right, left, b, a
	}
	if !b.written {
		if !slices.ContainsFunc(a.words, func(w string) bool { return slices.Contains(b.words, w) }) {
			c.fail(left.span().with(right.span()), "", "%s and %s have no word in common", c.quote(left.span()), c.quote(right.span()))
		}
		return
	}
	for _, w := range b.words {
		if !slices.Contains(a.words, w) {
			hint := cmp.Or(near(w, a.words), "it can be "+strings.Join(a.words, ", "))
			c.fail(right.span(), hint, "%s cannot be %q", c.quote(left.span()), w)
		}
	}
}

// checkWordOf refuses an argument that is, or could be, no word of a parameter
// that takes a few: a misspelled one would never be answered.
func (c *compiler) checkWordOf(parameter reflect.Type, name string, arg term) {
	wanted := wordsOf(parameter)
	if wanted == nil || arg.shape().class == unsetClass {
		return
	}
	all := "it can be " + strings.Join(wanted.words, ", ")
	given := arg.shape().words
	if given == nil {
		c.fail(arg.span(), all, "%s can be any text, %s expected one of a few words", c.quote(arg.span()), name)
	}
	for _, w := range given.words {
		if !slices.Contains(wanted.words, w) {
			c.fail(arg.span(), cmp.Or(near(w, wanted.words), all), "%s does not take %q", name, w)
		}
	}
}
