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
	ref     []int    // path to its document.Ref; nil when it has none
}

// member is one key.
type member struct {
	key      string
	shape    shape
	optional bool
	path     []int // to the Go field
	owner    *structure
	link     bool // the field leads to a thing by its method Target
	target   int  // index of that method
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
			if s.ref == nil {
				s.ref = at
			}
		case f.Anonymous && tag == "" && f.Type.Kind() == reflect.Struct:
			s.gather(f.Type, at)
		case f.IsExported() && tag != "" && tag != "-":
			s.add(f, tag, at)
		}
	}
}

func (s *structure) add(f reflect.StructField, tag string, path []int) {
	key, options, _ := strings.Cut(tag, ",")
	m := &member{key: key, path: path, owner: s}
	m.optional = f.Type.Kind() == reflect.Pointer && options != "required"
	t := f.Type
	if thing, method, ok := target(t); ok {
		m.link, m.target, m.shape = true, method, shape{class: thingClass, goType: thing}
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

// target finds the type of the thing that a link leads to, and the method that
// gives it.
func target(t reflect.Type) (thing reflect.Type, method int, ok bool) {
	if t.Kind() != reflect.Pointer {
		t = reflect.PointerTo(t)
	}
	m, ok := t.MethodByName("Target")
	if !ok || m.Type.NumIn() != 1 || m.Type.NumOut() != 1 {
		return nil, 0, false
	}
	thing = m.Type.Out(0)
	return thing, m.Index, thing.Kind() == reflect.Pointer && thing.Elem().Kind() == reflect.Struct
}

// value reads the key of a thing; ok is false when the design does not give it.
func (m *member) value(thing any) (v any, ok bool) {
	f := reflect.ValueOf(thing).Elem().FieldByIndex(m.path)
	if f.Kind() == reflect.Pointer {
		if f.IsNil() {
			return nil, false
		}
		if !m.link {
			f = f.Elem()
		}
	} else if m.link {
		f = f.Addr()
	}
	if !m.link {
		return m.convert(f), true
	}
	to := f.Method(m.target).Call(nil)[0]
	return to.Interface(), !to.IsNil()
}

// read is value with a missing key as an error.
func (m *member) read(thing any) (any, error) {
	v, ok := m.value(thing)
	if !ok {
		return nil, &document.Missing{Ref: m.owner.refOf(thing), Key: m.key}
	}
	return v, nil
}

// refOf gives the place of a thing in the design.
func (s *structure) refOf(thing any) document.Ref {
	if s.ref == nil {
		return document.Ref{}
	}
	return reflect.ValueOf(thing).Elem().FieldByIndex(s.ref).Interface().(document.Ref)
}

// placeOf gives the place of any value; ok is false for what has none.
func placeOf(v any) (document.Ref, bool) {
	t := reflect.TypeOf(v)
	if t == nil || t.Kind() != reflect.Pointer || t.Elem().Kind() != reflect.Struct {
		return document.Ref{}, false
	}
	s := structureOf(t)
	return s.refOf(v), s.ref != nil
}
