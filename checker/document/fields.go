package document

import (
	"reflect"
	"strings"
)

// Field is one key of a struct type that Decode fills.
type Field struct {
	Key      string
	Required bool
	Index    []int // of the field, through embedded structs
	Tag      reflect.StructTag

	shape *shape
}

// Type is that of the field.
func (f *Field) Type() reflect.Type { return f.shape.typ }

// Fields lists the keys of a struct type, in the order of its fields.
func Fields(t reflect.Type) []Field { return shapeOf(t).fields().list }

// fields is what the decoder knows of a struct type.
type fields struct {
	list     []Field
	required int   // how many of them are
	ref      []int // index of the embedded Ref; nil without one
}

var refType = reflect.TypeFor[Ref]()

// fieldsOf looks at a struct type.
func fieldsOf(t reflect.Type) *fields {
	f := &fields{list: make([]Field, 0, room(t))}
	f.gather(t, nil)
	return f
}

// room is how many keys a struct type has at most. Structs embed others first.
func room(t reflect.Type) int {
	most := t.NumField()
	for i := 0; i < t.NumField() && t.Field(i).Anonymous; i++ {
		if embedded := t.Field(i).Type; embedded.Kind() == reflect.Struct {
			most += room(embedded)
		}
	}
	return most
}

func (f *fields) gather(t reflect.Type, index []int) {
	for i := range t.NumField() {
		each := t.Field(i)
		at := each.Index
		if len(index) > 0 {
			at = append(index[:len(index):len(index)], i)
		}
		key, options, _ := strings.Cut(each.Tag.Get("toml"), ",")
		switch {
		case each.Type == refType && each.Anonymous:
			f.ref = at
		case each.Anonymous && key == "" && each.Type.Kind() == reflect.Struct:
			f.gather(each.Type, at)
		case key != "" && key != "-":
			required := options == "required"
			f.list = append(f.list, Field{key, required, at, each.Tag, shapeOf(each.Type)})
			if required {
				f.required++
			}
		}
	}
}

// find gives the place of a key in the list, or -1. It looks from a place on: files
// list their keys much in the order of the fields.
func (f *fields) find(key string, from int) int {
	for i := from; i < len(f.list); i++ {
		if f.list[i].Key == key {
			return i
		}
	}
	for i := range from {
		if f.list[i].Key == key {
			return i
		}
	}
	return -1
}

func (f *fields) keys() []string {
	keys := make([]string, len(f.list))
	for i := range f.list {
		keys[i] = f.list[i].Key
	}
	return keys
}
