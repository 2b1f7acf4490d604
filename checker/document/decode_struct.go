package document

import (
	"fmt"
	"reflect"
	"strings"
	"sync"
)

// structure decodes a table into the fields of a struct.
func (d *decoder) structure(n *node, v reflect.Value) bool {
	if n.kind != table {
		return d.wrong(n, v.Type())
	}
	d.refer(n, v)
	f := fieldsOf(v.Type())
	for _, c := range n.children {
		if i, ok := f.byKey[c.name]; ok {
			d.value(c, v.FieldByIndex(f.list[i].path))
			continue
		}
		if len(d.problems) <= MaxProblems { // else not even the hint is wanted
			d.report(c, c.key, d.unknownHint(c.name, f), "unknown key %.64q", c.name)
		}
	}
	for _, want := range f.list {
		if want.required && n.child(want.key) == nil {
			d.missing(n, want)
		}
	}
	return true
}

// refer sets the Ref of a struct, if it has one.
func (d *decoder) refer(n *node, v reflect.Value) {
	if path := fieldsOf(v.Type()).ref; path != nil {
		v.FieldByIndex(path).Set(reflect.ValueOf(Ref{d.tree, n}))
	}
}

// unknownHint names the key that was probably meant, or all of a few.
func (d *decoder) unknownHint(name string, f *fields) string {
	const few = 12
	if near := Near(name, f.keys()); near != "" {
		return meant(near)
	}
	if len(f.list) > few {
		return ""
	}
	return "expected one of " + words(f.keys())
}

func (d *decoder) missing(n *node, want field) {
	hint := ""
	if allowed := valuesOf(want.typ); allowed != nil {
		hint = "expected one of " + words(allowed)
	}
	d.add(n.heading(), join(n.path(), want.key), hint, fmt.Sprintf("missing key %q", want.key))
}

// fields is what the decoder knows of a struct type.
type fields struct {
	list  []field
	byKey map[string]int // index in list
	ref   []int          // path to the embedded Ref; nil without one
}

// field is one key of a struct.
type field struct {
	key      string
	required bool
	path     []int
	typ      reflect.Type
}

func (f *fields) keys() []string {
	keys := make([]string, len(f.list))
	for i, each := range f.list {
		keys[i] = each.key
	}
	return keys
}

var known sync.Map // reflect.Type of a struct: *fields

func fieldsOf(t reflect.Type) *fields {
	if f, ok := known.Load(t); ok {
		return f.(*fields)
	}
	f := &fields{byKey: map[string]int{}}
	f.gather(t, nil)
	known.Store(t, f)
	return f
}

var refType = reflect.TypeFor[Ref]()

func (f *fields) gather(t reflect.Type, path []int) {
	for i := range t.NumField() {
		each := t.Field(i)
		at := append(append([]int(nil), path...), i)
		key, options, _ := strings.Cut(each.Tag.Get("toml"), ",")
		switch {
		case each.Type == refType && each.Anonymous:
			f.ref = at
		case each.Anonymous && key == "" && each.Type.Kind() == reflect.Struct:
			f.gather(each.Type, at)
		case key != "" && key != "-":
			f.byKey[key] = len(f.list)
			f.list = append(f.list, field{key, options == "required", at, each.Type})
		}
	}
}
