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
			v.SetBool(n.word == "true")
			return true
		}
	case reflect.Int, reflect.Int64:
		if n.kind == whole {
			v.SetInt(n.value().(int64))
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
	if s.words != nil && !slices.Contains(s.words, n.word) {
		hint := ""
		if near := Near(n.word, s.words); near != "" {
			hint = meant(near)
		}
		d.report(n, n.at, hint, "found %q, expected one of %s", excerpt(n.word), words(s.words))
		return false
	}
	v.SetString(n.word)
	return true
}

func (d *decoder) number(n *node, v reflect.Value) bool {
	switch x := n.value().(type) {
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
		x := n.value().(float64)
		ok = !math.IsInf(x, 0) && !math.IsNaN(x)
	}
	if !ok {
		d.report(n, n.at, "", "found %s, expected a finite number", d.shown(n))
	}
	for _, c := range n.children {
		ok = d.finite(c) && ok
	}
	return ok
}

// generic is the value of a node in plain Go types.
func (n *node) generic() any {
	switch n.kind {
	case table:
		m := make(map[string]any, len(n.children))
		for _, c := range n.children {
			m[c.name] = c.generic()
		}
		return m
	case array:
		list := make([]any, len(n.children))
		for i, c := range n.children {
			list[i] = c.generic()
		}
		return list
	}
	return n.value()
}
