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

var errorType = reflect.TypeFor[error]()

func newFunction(f Function) (*function, error) {
	call := reflect.ValueOf(f.Call)
	t := call.Type()
	if t.Kind() != reflect.Func || t.IsVariadic() || t.NumIn() < 1 || t.NumOut() != 2 || t.Out(1) != errorType {
		return nil, fmt.Errorf("function %q has type %v, expected func(facts, arguments ...) (value, error)", f.Name, t)
	}
	result, convert, ok := shapeOf(t.Out(0))
	if !ok {
		return nil, fmt.Errorf("function %q gives %v, which expressions cannot hold", f.Name, t.Out(0))
	}
	made := &function{signature: f.Signature, reads: f.Reads}
	for i := 1; i < t.NumIn(); i++ {
		if !passable(t.In(i)) {
			return nil, fmt.Errorf("function %q takes %v, which expressions cannot hold", f.Name, t.In(i))
		}
		made.takes = append(made.takes, t.In(i))
	}
	made.operation = &operation{name: f.Name, result: result, scoped: true, call: caller(f.Name, call, convert)}
	return made, nil
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

// caller makes the operation of a function.
func caller(name string, f reflect.Value, convert converter) func(args ...any) (any, error) {
	parameters := make([]reflect.Type, f.Type().NumIn())
	for i := range parameters {
		parameters[i] = f.Type().In(i)
	}
	return func(args ...any) (any, error) {
		scope := args[0].(*Scope)
		if err := scope.spend(1); err != nil {
			return nil, err
		}
		in := make([]reflect.Value, len(args))
		in[0] = reflect.ValueOf(scope.facts)
		for i, arg := range args[1:] {
			in[i+1] = fit(arg, parameters[i+1])
		}
		out := f.Call(in)
		if err, _ := out[1].Interface().(error); err != nil {
			return nil, err
		}
		if v := out[0]; v.Kind() == reflect.Pointer && v.IsNil() {
			return nil, &Undetermined{name + "() finds nothing"}
		}
		return convert(out[0]), nil
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
