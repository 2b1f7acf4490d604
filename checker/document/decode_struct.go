package document

import (
	"fmt"
	"reflect"
)

// structure decodes a table into the fields of a struct.
func (d *decoder) structure(n *node, v reflect.Value, s *shape) bool {
	if n.kind != table {
		return d.wrong(n, s.typ)
	}
	f := s.fields()
	d.refer(n, v, f)
	next := 0
	for _, c := range n.children {
		i := f.find(c.name, next)
		if i < 0 {
			d.unknown(c, f)
			continue
		}
		d.value(c, v.FieldByIndex(f.list[i].Index), f.list[i].shape)
		next = i + 1
	}
	for i := range f.list {
		if want := &f.list[i]; want.Required && n.child(want.Key) == nil {
			d.missing(n, want)
		}
	}
	return true
}

// refer sets the Ref of a struct, if it has one.
func (d *decoder) refer(n *node, v reflect.Value, f *fields) {
	if f.ref != nil {
		*v.FieldByIndex(f.ref).Addr().Interface().(*Ref) = Ref{d.tree, n}
	}
}

func (d *decoder) unknown(n *node, f *fields) {
	if len(d.problems) <= MaxProblems { // else not even the hint is wanted
		d.report(n, n.key, unknownHint(n.name, f), "unknown key %.64q", n.name)
	}
}

// unknownHint names the key that was probably meant, or all of a few.
func unknownHint(name string, f *fields) string {
	const few = 12
	if near := Near(name, f.keys()); near != "" {
		return meant(near)
	}
	if len(f.list) > few {
		return ""
	}
	return "expected one of " + words(f.keys())
}

func (d *decoder) missing(n *node, want *Field) {
	hint := ""
	if allowed := wordsOf(want.Type()); allowed != nil {
		hint = "expected one of " + words(allowed)
	}
	d.add(n.heading(), join(n.path(), want.Key), hint, fmt.Sprintf("missing key %q", want.Key))
}
