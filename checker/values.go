package checker

import (
	"reflect"
	"strings"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/quantity"
)

// pair prints the two sides of a comparison. Two quantities show their
// difference; a list is its values with commas, a thing its label.
func pair(found, required any, units quantity.System) (string, string) {
	if plain(found) && plain(required) {
		return quantity.FormatPair(found, required, units)
	}
	return printed(found, units), printed(required, units)
}

// plain tells whether a value is a quantity, a number, a text or a yes-or-no.
func plain(v any) bool {
	r := reflect.ValueOf(v)
	return r.Kind() != reflect.Slice && !thing(r)
}

func thing(r reflect.Value) bool {
	return r.Kind() == reflect.Pointer && r.Type().Elem().Kind() == reflect.Struct
}

func printed(v any, units quantity.System) string {
	r := reflect.ValueOf(v)
	switch {
	case r.Kind() == reflect.Slice:
		var items []string
		for i := range r.Len() {
			items = append(items, printed(r.Index(i).Interface(), units))
		}
		return strings.Join(items, ", ")
	case thing(r) && !r.IsNil():
		return design.Label(v)
	}
	return quantity.Format(v, units)
}
