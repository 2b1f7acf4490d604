package expression

import (
	"fmt"
	"reflect"
	"strings"
	"unicode"

	"github.com/ventlint/ventlint/checker/quantity"
)

// class is what a value can be.
type class uint8

const (
	unsetClass  class = iota // of a limit that has no value: it goes with everything
	truthClass               // bool
	numberClass              // float64, whole numbers included
	textClass                // string
	quantityClass
	thingClass // pointer to a struct
	listClass  // slice
)

// shape is the type of an expression. Values of the same shape have the same Go
// type, except lists: those are slices of the element's Go type or of any.
type shape struct {
	class
	goType reflect.Type // of a quantity or a thing
	elem   *shape       // of a list
	words  *wordList    // of text that is one of a few words
}

// wordList is what a text can be.
type wordList struct {
	words   []string
	written bool // in the expression itself, so that each must fit
}

var (
	truthShape  = shape{class: truthClass, goType: reflect.TypeFor[bool]()}
	numberShape = shape{class: numberClass, goType: reflect.TypeFor[float64]()}
	textShape   = shape{class: textClass, goType: reflect.TypeFor[string]()}
	unsetShape  = shape{class: unsetClass}
)

func listOf(elem shape) shape { return shape{class: listClass, elem: &elem} }

// is tells whether a value of one shape can stand where the other is expected.
func (s shape) is(other shape) bool {
	if s.class == unsetClass || other.class == unsetClass {
		return true
	}
	if s.class != other.class {
		return false
	}
	if s.class == listClass {
		return s.elem.is(*other.elem)
	}
	return s.goType == other.goType
}

// ordered tells whether values can be greater and smaller.
func (s shape) ordered() bool { return s.class == numberClass || s.class == quantityClass }

// shapeOf gives the shape of a Go type and how its values are brought to it.
func shapeOf(t reflect.Type) (shape, converter, bool) {
	if isQuantity(t) {
		return shape{class: quantityClass, goType: t}, asIs, true
	}
	switch t.Kind() {
	case reflect.Bool:
		return truthShape, asBool, true
	case reflect.Float64, reflect.Float32:
		return numberShape, asFloat, true
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return numberShape, asInt, true
	case reflect.String:
		if words := wordsOf(t); words != nil {
			return shape{class: textClass, goType: textShape.goType, words: words}, asWord(words.words), true
		}
		return textShape, asText, true
	case reflect.Struct:
		return shape{class: thingClass, goType: reflect.PointerTo(t)}, asPointer, true
	case reflect.Pointer:
		if t.Elem().Kind() == reflect.Struct {
			return shape{class: thingClass, goType: t}, asIs, true
		}
	case reflect.Slice:
		elem, convert, ok := shapeOf(t.Elem())
		return listOf(elem), asList(t, elem, convert), ok
	}
	return shape{}, nil, false
}

// wordsOf asks a named string type for the words that it allows.
func wordsOf(t reflect.Type) *wordList {
	if v, ok := reflect.Zero(t).Interface().(interface{ Values() []string }); ok {
		return &wordList{words: v.Values()}
	}
	return nil
}

// String names a shape for people: "a length", "a list of text".
func (s shape) String() string {
	switch s.class {
	case truthClass:
		return "a yes or no"
	case numberClass:
		return "a plain number"
	case textClass:
		return "text"
	case quantityClass:
		return withArticle(quantity.NameOf(s.goType))
	case thingClass:
		return withArticle(spaced(s.goType.Elem().Name()))
	case listClass:
		return "a list"
	}
	return "a limit that is not set"
}

func withArticle(noun string) string {
	if noun != "" && strings.ContainsRune("aeiou", rune(noun[0])) {
		return "an " + noun
	}
	return "a " + noun
}

// spaced turns the name of a Go type into words.
func spaced(name string) string {
	var b strings.Builder
	for i, r := range name {
		if unicode.IsUpper(r) && i > 0 {
			b.WriteByte(' ')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}

// example shows how a value of a shape is written.
func (s shape) example() string {
	if s.class == quantityClass {
		return fmt.Sprintf("such as %q", quantity.ExampleOf(s.goType))
	}
	return "such as 5"
}
