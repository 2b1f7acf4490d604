package document

import (
	"reflect"
	"strings"
)

// fields is what the decoder knows of a struct type.
type fields struct {
	list []field
	ref  []int // path to the embedded Ref; nil without one
}

// field is one key of a struct.
type field struct {
	key      string
	required bool
	path     []int
	shape    *shape
}

var refType = reflect.TypeFor[Ref]()

func (f *fields) gather(t reflect.Type, path []int) {
	for i := range t.NumField() {
		each := t.Field(i)
		at := append(path[:len(path):len(path)], i)
		key, options, _ := strings.Cut(each.Tag.Get("toml"), ",")
		switch {
		case each.Type == refType && each.Anonymous:
			f.ref = at
		case each.Anonymous && key == "" && each.Type.Kind() == reflect.Struct:
			f.gather(each.Type, at)
		case key != "" && key != "-":
			f.list = append(f.list, field{key, options == "required", at, shapeOf(each.Type)})
		}
	}
}

// find gives the place of a key in the list, or -1. It looks from a place on: files
// list their keys much in the order of the fields.
func (f *fields) find(key string, from int) int {
	for i := from; i < len(f.list); i++ {
		if f.list[i].key == key {
			return i
		}
	}
	for i := range from {
		if f.list[i].key == key {
			return i
		}
	}
	return -1
}

func (f *fields) keys() []string {
	keys := make([]string, len(f.list))
	for i, each := range f.list {
		keys[i] = each.key
	}
	return keys
}
