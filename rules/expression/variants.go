package expression

import (
	"fmt"
	"reflect"
	"slices"
)

// Variant is a condition with one thing changed. Samples of a rule that cannot
// tell it from the rule leave that thing unproven.
type Variant struct {
	Source string // the whole changed expression; it compiles
	Change string // `">=" turned into ">"`
	Offset int    // of what was changed in the original, in runes
	Length int
}

// Variants lists every single change of a comparison, a figure, a part of `and`
// and `or`, a `not`, or a quantifier.
func (c *Condition) Variants() []Variant {
	settled, err := c.settled()
	if err != nil {
		return nil
	}
	v := &varying{source: settled.source}
	v.condition(settled.root)
	return v.made
}

type varying struct {
	*source
	made []Variant
}

// put replaces a part of the text.
func (v *varying) put(at span, by, format string, args ...any) {
	text := v.part(0, at.from) + by + v.part(at.to, v.size())
	v.made = append(v.made, Variant{text, fmt.Sprintf(format, args...), at.from, at.to - at.from})
}

func (v *varying) raw(t term) string { return v.part(t.span().from, t.span().to) }

// condition varies what is true or false.
func (v *varying) condition(t term) {
	switch t := t.(type) {
	case *comparison:
		v.comparison(t)
	case *junction:
		v.junction(t)
	case *negation:
		if t.span() != t.of.span() { // else "x not in y", which is turned as a comparison
			v.put(t.span(), "("+v.raw(t.of)+")", "%q without its negation", v.text(t.span()))
		}
		v.condition(t.of)
	case *choice:
		v.put(t.span(), "("+v.raw(t.yes)+")", "%q whether or not %q", v.text(t.yes.span()), v.text(t.condition.span()))
		v.put(t.span(), "("+v.raw(t.no)+")", "%q whether or not %q", v.text(t.no.span()), v.text(t.condition.span()))
		v.inside(t.condition, t.yes, t.no)
	case *loop:
		v.loop(t)
	case *binding:
		v.inside(t.definition, t.body)
	case *variable:
	default:
		v.negated(t)
	}
}

// inside varies terms of all kinds.
func (v *varying) inside(terms ...term) {
	for _, t := range terms {
		switch l, isLoop := t.(*loop); {
		case t.shape().class == truthClass:
			v.condition(t)
		case isLoop:
			v.inside(l.list, l.body)
		default:
			v.inside(operands(t)...)
		}
	}
}

// operands are the terms that a value is computed from.
func operands(t term) []term {
	switch t := t.(type) {
	case *application:
		return t.arguments
	case *field:
		return []term{t.of}
	case *fallback:
		return []term{t.other}
	case *choice:
		return []term{t.condition, t.yes, t.no}
	case *array:
		return t.elements
	}
	return nil
}

func (v *varying) negated(t term) {
	v.put(t.span(), "(not ("+v.raw(t)+"))", "%q negated", v.text(t.span()))
}

// turns are what a sign may have been meant as: without its limit, or the other
// way round.
var turns = map[string][]string{">=": {">", "<"}, "<=": {"<", ">"}, ">": {">=", "<="}, "<": {"<=", ">="}, "==": {"!="}, "!=": {"=="}}

// A comparison with a limit that is not set is never known, however it is turned.
func (v *varying) comparison(t *comparison) {
	for _, turned := range turns[t.symbol] {
		if !waits(t.left) && !waits(t.right) {
			v.put(t.sign, turned, "%q turned into %q in %q", t.symbol, turned, v.text(t.span()))
		}
	}
	if turns[t.symbol] == nil {
		v.negated(t)
	}
	for _, side := range []term{t.left, t.right} {
		v.nudged(side)
		v.inside(side)
	}
}

// waits tells whether a value rests on a limit that is not set.
func waits(t term) bool {
	if l, ok := t.(*limit); ok {
		return l.content == nil
	}
	return slices.ContainsFunc(operands(t), waits)
}

// nudged moves a figure by a hundredth, up and down.
func (v *varying) nudged(t term) {
	var content any
	switch t := t.(type) {
	case *literal:
		content = t.content
	case *limit:
		content = t.content
	}
	scale := theCalculus().binary[operatorKey{"*", t.shape().goType, numberShape.goType}]
	if content == nil || scale == nil || reflect.ValueOf(content).IsZero() {
		return
	}
	v.put(t.span(), "("+v.raw(t)+" * 1.01)", "%q raised by 1 %%", v.text(t.span()))
	v.put(t.span(), "("+v.raw(t)+" * 0.99)", "%q lowered by 1 %%", v.text(t.span()))
}

func (v *varying) junction(t *junction) {
	for i, side := range t.sides {
		v.put(t.span(), "("+v.raw(t.sides[1-i])+")", "without %q", v.text(side.span()))
	}
	v.inside(t.sides[:]...)
}

// quantifiers are what another one may have been meant as.
var quantifiers = map[string]string{"all": "any", "any": "all", "none": "any", "one": "any"}

func (v *varying) loop(t *loop) {
	if other, ok := quantifiers[t.name]; ok {
		name := span{t.at.from, t.at.from + len(t.name)}
		if v.part(name.from, name.to) == t.name { // not behind a pipe
			v.put(name, other, "%q turned into %q in %q", t.name, other, v.text(t.span()))
		}
	}
	v.inside(t.list, t.body)
}
