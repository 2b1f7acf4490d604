package document

import (
	"reflect"
	"sync"
)

// traits is what the decoder asks of a type again and again.
type traits struct {
	unmarshals bool     // a pointer to it is an Unmarshaler
	words      []string // that it takes; nil when it takes any
}

var traitsByType sync.Map // reflect.Type: traits

func traitsOf(t reflect.Type) traits {
	if known, ok := traitsByType.Load(t); ok {
		return known.(traits)
	}
	found := traits{unmarshals: reflect.PointerTo(t).Implements(unmarshalerType)}
	if enumeration, ok := reflect.Zero(t).Interface().(interface{ Values() []string }); ok {
		found.words = enumeration.Values()
	}
	traitsByType.Store(t, found)
	return found
}

// valuesOf gives the words that a type, or what it points to, takes; nil when
// it takes any.
func valuesOf(t reflect.Type) []string {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	return traitsOf(t).words
}
