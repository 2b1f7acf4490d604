package expression

import (
	"reflect"
	"sort"
	"strings"
	"sync"

	"github.com/ventlint/ventlint/checker/document"
)

// structure is what expressions can see of a struct: its keys.
type structure struct {
	members map[string]*member
	keys    []string // sorted
}

// member is one key.
type member struct {
	key      string
	shape    shape
	optional bool
	path     []int // to the Go field
	link     bool  // the field leads to a thing
	convert  converter
}

var structures sync.Map // reflect.Type of a struct: *structure

// structureOf looks into the struct behind a pointer type, once.
func structureOf(pointer reflect.Type) *structure {
	t := pointer.Elem()
	if known, ok := structures.Load(t); ok {
		return known.(*structure)
	}
	s := &structure{members: map[string]*member{}}
	s.gather(t, nil)
	for key := range s.members {
		s.keys = append(s.keys, key)
	}
	sort.Strings(s.keys)
	known, _ := structures.LoadOrStore(t, s)
	return known.(*structure)
}

var refType = reflect.TypeFor[document.Ref]()

// gather adds the fields of a struct; embedded structs without a key belong to
// the struct around them.
func (s *structure) gather(t reflect.Type, path []int) {
	for i := range t.NumField() {
		f := t.Field(i)
		at := append(append([]int(nil), path...), i)
		tag := f.Tag.Get("toml")
		switch {
		case f.Type == refType:
		case f.Anonymous && tag == "" && f.Type.Kind() == reflect.Struct:
			s.gather(f.Type, at)
		case f.IsExported() && tag != "" && tag != "-":
			s.add(f, tag, at)
		}
	}
}

func (s *structure) add(f reflect.StructField, tag string, path []int) {
	key, options, _ := strings.Cut(tag, ",")
	m := &member{key: key, path: path}
	m.optional = f.Type.Kind() == reflect.Pointer && options != "required"
	t := f.Type
	if thing, ok := target(t); ok {
		m.link, m.shape = true, shape{class: thingClass, goType: thing}
		s.members[key] = m
		return
	}
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	ok := false
	if m.shape, m.convert, ok = shapeOf(t); ok {
		s.members[key] = m
	}
}

// target finds the type of the thing that a link leads to: what its method Target
// gives, which Thing gives as any.
func target(t reflect.Type) (thing reflect.Type, ok bool) {
	if t.Kind() != reflect.Pointer {
		t = reflect.PointerTo(t)
	}
	if !t.Implements(reflect.TypeFor[leading]()) {
		return nil, false
	}
	m, ok := t.MethodByName("Target")
	if !ok || m.Type.NumIn() != 1 || m.Type.NumOut() != 1 {
		return nil, false
	}
	thing = m.Type.Out(0)
	return thing, thing.Kind() == reflect.Pointer && thing.Elem().Kind() == reflect.Struct
}

// leading is a link to a thing, which may lead nowhere.
type leading interface{ Thing() any }

// value reads the key of a thing; ok is false when the design does not give it.
func (m *member) value(thing any) (v any, ok bool) {
	f := reflect.ValueOf(thing).Elem()
	for _, i := range m.path {
		f = f.Field(i)
	}
	pointer := f.Kind() == reflect.Pointer
	switch {
	case pointer && f.IsNil():
		return nil, false
	case m.link:
		if !pointer {
			f = f.Addr()
		}
		to := f.Interface().(leading).Thing()
		return to, !isNil(to)
	case pointer:
		f = f.Elem()
	}
	return m.convert(f), true
}

// read is value with a missing key as an error.
func (m *member) read(thing any) (any, error) {
	v, ok := m.value(thing)
	if !ok {
		return nil, &document.Missing{Ref: refOf(thing), Key: m.key}
	}
	return v, nil
}

// located is a thing that has a place in the file.
type located interface{ Self() document.Ref }

// refOf gives the place of a thing in the design; the zero Ref for what has none.
func refOf(thing any) document.Ref {
	ref, _ := placeOf(thing)
	return ref
}

// placeOf gives the place of any value; ok is false for what has none.
func placeOf(v any) (document.Ref, bool) {
	p, ok := v.(located)
	if !ok || isNil(v) {
		return document.Ref{}, false
	}
	return p.Self(), true
}
