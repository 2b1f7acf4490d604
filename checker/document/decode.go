package document

import (
	"fmt"
	"reflect"
)

// Unmarshaler is a type that reads itself from the value of a key: a string,
// int64, float64, bool, Moment, []any or map[string]any. When it is a struct
// that embeds Ref, the Ref is set before. An error says what was found and what
// was expected; an *ElementError points at one element of an array.
type Unmarshaler interface{ UnmarshalTOML(value any) error }

// Decode fills the struct that into points to. It reports all mistakes, in file
// order: unknown keys, required ones that are missing, and wrong types.
//
// Fields have tags: `toml:"key"` or `toml:"key,required"`; a pointer stays nil
// when the key is not given. An embedded struct without a tag shares the table
// of the struct around it. A string type with a method Values() []string takes
// only those words. What has a mistake keeps its zero value.
func (t *Tree) Decode(into any) []Problem {
	d := &decoder{tree: t}
	v := reflect.ValueOf(into).Elem()
	d.value(t.root(), v, shapeOf(v.Type()))
	return Limit(d.problems)
}

type decoder struct {
	tree     *Tree
	problems []Problem
}

func (d *decoder) report(n *node, at span, hint, format string, args ...any) {
	d.add(at, d.tree.path(n), hint, fmt.Sprintf(format, args...))
}

func (d *decoder) add(at span, path, hint, message string) {
	if len(d.problems) <= MaxProblems {
		d.problems = append(d.problems, Problem{Position: d.tree.lines.position(at), Path: path, Message: message, Hint: hint})
	}
}

// value decodes a node into v. It tells whether v got a value; the value may
// still have mistakes inside, which were reported.
func (d *decoder) value(n *node, v reflect.Value, s *shape) bool {
	switch {
	case s.kind == reflect.Pointer:
		return d.pointer(n, v, s)
	case s.unmarshals:
		return d.unmarshal(n, v.Addr(), s)
	}
	switch s.kind {
	case reflect.Struct:
		return d.structure(n, v, s)
	case reflect.Map:
		return d.mapping(n, v, s)
	case reflect.Slice:
		if s.of.typ == reflect.TypeFor[Pair]() {
			return d.pairs(n, v)
		}
		return d.list(n, v, s)
	case reflect.Interface:
		return d.anything(n, v)
	}
	return d.scalar(n, v, s)
}

func (d *decoder) pointer(n *node, v reflect.Value, s *shape) bool {
	to := reflect.New(s.of.typ)
	good := false
	if s.of.unmarshals {
		good = d.unmarshal(n, to, s.of)
	} else {
		good = d.value(n, to.Elem(), s.of)
	}
	if good {
		v.Set(to)
	}
	return good
}

// unmarshal lets a type read itself; to points to one.
func (d *decoder) unmarshal(n *node, to reflect.Value, s *shape) bool {
	if n.kind != text && !d.finite(n) {
		return false
	}
	if s.kind == reflect.Struct {
		d.refer(n, to.Elem(), s.fields())
	}
	err := to.Interface().(Unmarshaler).UnmarshalTOML(d.tree.generic(n))
	if err == nil {
		return true
	}
	if element, ok := err.(*ElementError); ok && n.kind == array && element.Index < d.tree.size(n) {
		n = d.tree.element(n, element.Index)
	}
	d.report(n, n.at, "", "%v", err)
	return false
}

func (d *decoder) anything(n *node, v reflect.Value) bool {
	if !d.finite(n) {
		return false
	}
	v.Set(reflect.ValueOf(d.tree.generic(n)))
	return true
}

// list decodes an array. Elements of the wrong type are left out.
func (d *decoder) list(n *node, v reflect.Value, s *shape) bool {
	if n.kind != array {
		return d.wrong(n, s.typ)
	}
	size := d.tree.size(n)
	v.Set(reflect.MakeSlice(s.typ, size, size))
	good := 0
	for c := range d.tree.children(n) {
		element := v.Index(good)
		if d.value(c, element, s.of) {
			good++
		} else {
			element.SetZero()
		}
	}
	v.SetLen(good)
	return true
}

// mapping decodes a table into a map from its keys.
func (d *decoder) mapping(n *node, v reflect.Value, s *shape) bool {
	if n.kind != table {
		return d.wrong(n, s.typ)
	}
	values := reflect.MakeMapWithSize(s.typ, d.tree.size(n))
	key, element := reflect.New(s.typ.Key()).Elem(), reflect.New(s.of.typ).Elem()
	for c := range d.tree.children(n) {
		if d.value(c, element, s.of) {
			key.SetString(d.tree.name(c))
			values.SetMapIndex(key, element)
		}
		element.SetZero()
	}
	v.Set(values)
	return true
}
