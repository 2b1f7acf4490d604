package document

import (
	"reflect"
	"sync"
)

// shape is what the decoder knows of a type. It is found once, as it is asked for
// with every value.
type shape struct {
	typ        reflect.Type
	kind       reflect.Kind
	unmarshals bool     // a pointer to it is an Unmarshaler
	words      []string // that it takes; nil when it takes any
	of         *shape   // what a pointer points to, and the elements of a list or map

	gather sync.Once // types of structs can hold one another: their fields come later
	inside *fields
}

var shapes sync.Map // reflect.Type: *shape

func shapeOf(t reflect.Type) *shape {
	if known, ok := shapes.Load(t); ok {
		return known.(*shape)
	}
	s := &shape{typ: t, kind: t.Kind(), unmarshals: unmarshals(t)}
	switch s.kind {
	case reflect.Pointer, reflect.Slice, reflect.Map:
		s.of = shapeOf(t.Elem())
	case reflect.String:
		if enumeration, ok := reflect.Zero(t).Interface().(interface{ Values() []string }); ok {
			s.words = enumeration.Values()
		}
	}
	known, _ := shapes.LoadOrStore(t, s)
	return known.(*shape)
}

var unmarshalerType = reflect.TypeFor[Unmarshaler]()

func unmarshals(t reflect.Type) bool {
	hasMethods := t.PkgPath() != "" || t.Kind() == reflect.Struct
	return hasMethods && reflect.PointerTo(t).Implements(unmarshalerType)
}

// fields are those of a struct.
func (s *shape) fields() *fields {
	s.gather.Do(func() { s.inside = fieldsOf(s.typ) })
	return s.inside
}

// wordsOf gives the words that a type, or what it points to, takes; nil when it
// takes any.
func wordsOf(t reflect.Type) []string {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	return shapeOf(t).words
}
