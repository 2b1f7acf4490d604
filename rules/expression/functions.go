package expression

import (
	"fmt"
	"reflect"

	"github.com/ventlint/ventlint/checker/document"
)

// function is a function of the vocabulary, ready to use.
type function struct {
	signature string
	takes     []reflect.Type
	operation *operation
	reads     func(facts any, arguments []any) []Read
}

func newFunction(f Function) (*function, error) {
	result, convert, ok := shapeOf(f.Call.gives)
	if !ok {
		return nil, fmt.Errorf("function %q gives %v, which expressions cannot hold", f.Name, f.Call.gives)
	}
	for _, t := range f.Call.takes {
		if !passable(t) {
			return nil, fmt.Errorf("function %q takes %v, which expressions cannot hold", f.Name, t)
		}
	}
	if f.Call.gives == result.goType {
		convert = nil
	}
	return &function{signature: f.Signature, takes: f.Call.takes, reads: f.Reads,
		operation: &operation{name: f.Name, result: result, scoped: true, call: caller(f, convert)}}, nil
}

// passable tells whether some expression has values of a parameter's type.
func passable(t reflect.Type) bool {
	if t.Kind() == reflect.Interface {
		return true
	}
	s, _, ok := shapeOf(t)
	return ok && (s.class == listClass || t == s.goType || s.words != nil)
}

// accepts tells whether a parameter can take values of a shape.
func accepts(parameter reflect.Type, s shape) bool {
	switch {
	case s.class == unsetClass:
		return true
	case parameter.Kind() == reflect.Interface:
		return s.goType != nil && s.goType.Implements(parameter)
	}
	wanted, _, _ := shapeOf(parameter)
	return s.is(wanted)
}

// caller makes the operation of a function. convert is nil where a result is of
// the type that expressions work with.
func caller(f Function, convert converter) func(args ...any) (any, error) {
	return func(args ...any) (any, error) {
		scope := args[0].(*Scope)
		if err := scope.spend(1); err != nil {
			return nil, err
		}
		v, err := f.Call.Do(scope.facts, args[1:]...)
		switch {
		case err != nil:
			return nil, err
		case isNil(v):
			return nil, &Undetermined{f.Name + "() finds nothing"}
		case convert != nil:
			return convert(reflect.ValueOf(v)), nil
		}
		return v, nil
	}
}

// fit brings a list to the slice type of a parameter, and text to its type of
// words; all else fits already.
func fit(arg any, parameter reflect.Type) reflect.Value {
	v := reflect.ValueOf(arg)
	switch {
	case v.Type() == parameter:
		return v
	case parameter.Kind() == reflect.String:
		return v.Convert(parameter)
	case parameter.Kind() != reflect.Slice:
		return v
	}
	list := reflect.MakeSlice(parameter, v.Len(), v.Len())
	for i := range v.Len() {
		list.Index(i).Set(fit(v.Index(i).Interface(), parameter.Elem()))
	}
	return list
}

// lookUp makes the operation of a table of the pack.
func lookUp(name string, t Table) (*operation, bool) {
	result, convert, ok := shapeOf(t.Result())
	return &operation{name: name, result: result, scoped: true, call: func(args ...any) (any, error) {
		if err := args[0].(*Scope).spend(1); err != nil {
			return nil, err
		}
		v, err := t.Look(args[1:])
		if err != nil {
			return nil, err
		}
		return convert(reflect.ValueOf(v)), nil
	}}, ok
}

// unsetLimit makes the operation of a limit without a value.
func unsetLimit(name string) *operation {
	return &operation{name: name, result: unsetShape, call: func(...any) (any, error) {
		return nil, &Undetermined{"limit." + name + " is not set"}
	}}
}

// near proposes what a misspelled name may have meant.
func near(word string, among []string) string {
	if n := document.Near(word, among); n != "" {
		return fmt.Sprintf("did you mean %q?", n)
	}
	return ""
}
