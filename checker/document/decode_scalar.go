package document

import (
	"math"
	"reflect"
	"slices"
)

// scalar decodes text, numbers and truth values.
func (d *decoder) scalar(n *node, v reflect.Value, s *shape) bool {
	switch s.kind {
	case reflect.String:
		return d.word(n, v, s)
	case reflect.Bool:
		if n.kind == truth {
			v.SetBool(d.tree.word(n) == "true")
			return true
		}
	case reflect.Int, reflect.Int64:
		if n.kind == whole {
			v.SetInt(d.tree.value(n).(int64))
			return true
		}
	case reflect.Float64:
		return d.number(n, v)
	default:
		panic("document: no decoding into " + s.typ.String())
	}
	return d.wrong(n, s.typ)
}

func (d *decoder) word(n *node, v reflect.Value, s *shape) bool {
	if n.kind != text {
		return d.wrong(n, s.typ)
	}
	if s.words != nil && !slices.Contains(s.words, d.tree.word(n)) {
		hint := ""
		if near := Near(d.tree.word(n), s.words); near != "" {
			hint = meant(near)
		}
		d.report(n, n.at, hint, "found %q, expected one of %s", excerpt(d.tree.word(n)), words(s.words))
		return false
	}
	v.SetString(d.tree.word(n))
	return true
}

func (d *decoder) number(n *node, v reflect.Value) bool {
	switch x := d.tree.value(n).(type) {
	case int64:
		v.SetFloat(float64(x))
		return true
	case float64:
		if d.finite(n) {
			v.SetFloat(x)
			return true
		}
		return false
	}
	return d.wrong(n, v.Type())
}

// finite refuses inf and nan, also inside arrays and tables.
func (d *decoder) finite(n *node) bool {
	ok := true
	if n.kind == decimal {
		x := d.tree.value(n).(float64)
		ok = !math.IsInf(x, 0) && !math.IsNaN(x)
	}
	if !ok {
		d.report(n, n.at, "", "found %s, expected a finite number", d.shown(n))
	}
	for c := range d.tree.children(n) {
		ok = d.finite(c) && ok
	}
	return ok
}

// generic is the value of a node in plain Go types.
func (t *Tree) generic(n *node) any {
	switch n.kind {
	case table:
		m := make(map[string]any, t.size(n))
		for c := range t.children(n) {
			m[t.name(c)] = t.generic(c)
		}
		return m
	case array:
		list := make([]any, 0, t.size(n))
		for c := range t.children(n) {
			list = append(list, t.generic(c))
		}
		return list
	}
	return t.value(n)
}
