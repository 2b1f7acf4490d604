package expression

import (
	"reflect"
	"slices"
)

// converter brings a Go value to the type that expressions work with.
type converter func(v reflect.Value) any

func asIs(v reflect.Value) any    { return v.Interface() }
func asBool(v reflect.Value) any  { return v.Bool() }
func asFloat(v reflect.Value) any { return v.Float() }
func asInt(v reflect.Value) any   { return float64(v.Int()) }
func asText(v reflect.Value) any  { return v.String() }

// asWord gives a text that is one of a few words, which are made values once.
func asWord(words []string) converter {
	values := make([]any, len(words))
	for i, w := range words {
		values[i] = w
	}
	return func(v reflect.Value) any {
		text := v.String()
		if i := slices.Index(words, text); i >= 0 {
			return values[i]
		}
		return text
	}
}

// asPointer gives a struct by reference where it can, so that it stays the same thing.
func asPointer(v reflect.Value) any {
	if v.CanAddr() {
		return v.Addr().Interface()
	}
	p := reflect.New(v.Type())
	p.Elem().Set(v)
	return p.Interface()
}

// asList passes a slice on where its elements need no conversion.
func asList(t reflect.Type, elem shape, convert converter) converter {
	if elem.class == thingClass && t.Elem() == elem.goType || elem.class == quantityClass || t.Elem() == elem.goType && elem.words == nil {
		return asIs
	}
	return func(v reflect.Value) any {
		list := make([]any, v.Len())
		for i := range list {
			list[i] = convert(v.Index(i))
		}
		return list
	}
}

// length is the number of elements of a list value.
func length(list any) int {
	if l, ok := list.([]any); ok {
		return len(l)
	}
	return reflect.ValueOf(list).Len()
}

// element gives one element of a list value.
func element(list any, i int) any {
	if l, ok := list.([]any); ok {
		return l[i]
	}
	return reflect.ValueOf(list).Index(i).Interface()
}
