package expression

import (
	"fmt"
	"reflect"
)

// List is a compiled expression that gives the things a rule ranges over.
type List struct{ *compiled }

// List compiles a list of things: a root, a list of an earlier subject such as
// `unit.filter`, or filter(...) of one, with a predicate that reads only keys
// that every design gives. The error is an *Error.
func (l *Language) List(text string, n Names) (*List, error) {
	c, err := l.compile(text, n)
	if err != nil {
		return nil, err
	}
	kind := c.root.shape()
	if kind.class != listClass || kind.elem.class != thingClass {
		return nil, c.mistake(c.root, "", fmt.Sprintf("%q is %v, expected a list of things", c.text(c.root.span()), kind))
	}
	if err := c.selects(c.root); err != nil {
		return nil, err
	}
	return &List{c}, nil
}

// Fixed tells whether the things are the same whatever the subjects are.
func (l *List) Fixed() bool { return !l.subjects }

// Elem is the type of the things.
func (l *List) Elem() reflect.Type { return l.root.shape().elem.goType }

// Items gives the things, in the order of the design. The errors are those of
// Condition.Truth, and *Undetermined for a limit that is not set.
func (l *List) Items(s *Scope) ([]any, error) {
	if items, ok := s.lists[l]; ok {
		return items, nil
	}
	r, err := s.begin(l.compiled)
	if err != nil {
		return nil, err
	}
	var v result
	if err := r.guarded(func() { v = l.root.value(r) }); err != nil {
		return nil, err
	}
	if v.lacks != nil {
		return nil, v.err()
	}
	items := make([]any, length(v.value))
	for i := range items {
		items[i] = element(v.value, i)
	}
	if l.Fixed() {
		s.lists[l] = items
	}
	return items, nil
}

const moveHint = "ask for it in `when`, where an unknown value is reported"

// selects refuses what may leave things out because a design does not give a
// key: a rule would pass over them in silence.
func (c *compiled) selects(t term) error {
	switch t := t.(type) {
	case *root, *subject, *literal, *limit, *elementTerm:
		return nil
	case *application:
		return c.mistake(t, moveHint, fmt.Sprintf("%q is computed, and may be unknown: expected only keys that every design gives", c.text(t.span())))
	case *field:
		if t.member.optional {
			return c.mistake(t, moveHint, fmt.Sprintf("%q may be left out, expected only keys that every design gives", c.text(t.span())))
		}
		return c.selects(t.of)
	case *loop:
		return c.selectsAll(t.list, t.body)
	case *comparison:
		return c.selectsAll(t.left, t.right)
	case *junction:
		return c.selectsAll(t.sides[:]...)
	case *negation:
		return c.selects(t.of)
	case *array:
		return c.selectsAll(t.elements...)
	}
	return c.mistake(t, moveHint, fmt.Sprintf("%q does not stand in a list of things", c.text(t.span())))
}

func (c *compiled) selectsAll(terms ...term) error {
	for _, t := range terms {
		if err := c.selects(t); err != nil {
			return err
		}
	}
	return nil
}
