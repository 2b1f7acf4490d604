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
	next, required := 0, 0
	for c := range d.tree.children(n) {
		i := f.find(d.tree.name(c), next)
		if i < 0 {
			d.unknown(c, f)
			continue
		}
		d.value(c, v.FieldByIndex(f.list[i].Index), f.list[i].shape)
		next = i + 1
		if f.list[i].Required {
			required++
		}
	}
	if required < f.required {
		d.lacking(n, f)
	}
	return true
}

// lacking reports the required keys that a table does not have.
func (d *decoder) lacking(n *node, f *fields) {
	for i := range f.list {
		if want := &f.list[i]; want.Required && d.tree.child(n, want.Key) == nil {
			d.missing(n, want)
		}
	}
}

// refer sets the Ref of a struct, if it has one.
func (d *decoder) refer(n *node, v reflect.Value, f *fields) {
	if f.ref != nil {
		*v.FieldByIndex(f.ref).Addr().Interface().(*Ref) = Ref{d.tree, n}
	}
}

func (d *decoder) unknown(n *node, f *fields) {
	if len(d.problems) <= MaxProblems { // else not even the hint is wanted
		name := d.tree.name(n)
		d.report(n, n.key, unknownHint(name, f), "unknown key %.64q", name)
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
	d.add(n.heading(), join(d.tree.path(n), want.Key), hint, fmt.Sprintf("missing key %q", want.Key))
}
