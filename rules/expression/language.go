package expression

import (
	"fmt"
	"reflect"
	"sort"

	"github.com/ventlint/ventlint/checker/document"
)

// Vocabulary is what expressions can ask of the facts of one design.
type Vocabulary struct {
	Roots     []Root
	Functions []Function
	Ref       func(facts any) document.Ref // of the whole design, for a root that it leaves out; may be nil
	Label     func(thing any) string       // a thing as people call it, for what it leaves out; may be nil
}

// Root is a name that stands for a part of the facts.
type Root struct {
	Name, Doc string
	Type      reflect.Type // pointer to a struct, or slice of such
	// Get gives a value of that type; a nil pointer is a missing part.
	Get func(facts any) any
}

// Function is a computed value. An error *document.Missing or document.MissingAll
// of its call makes the value unknown, an *Undetermined one leaves it to a person,
// any other ends the evaluation.
type Function struct {
	Name, Doc string
	Signature string // as people read it: "distance(a, b) length"
	Call      Call
	// Reads tells an explanation which keys a call rests on; may be nil. The
	// things among the arguments are noted in any case.
	Reads func(facts any, arguments []any) []Read
}

// Language compiles expressions over one vocabulary. It is safe for concurrent use.
type Language struct {
	roots     map[string]*rootName
	functions map[string]*function
	label     func(thing any) string
}

// rootName is a root, ready to use.
type rootName struct {
	shape     shape
	get, need *operation
}

// New prepares a language. It fails on a vocabulary with a name twice, a name
// that the language itself uses, or a type that expressions cannot hold.
func New(v Vocabulary) (*Language, error) {
	l := &Language{roots: map[string]*rootName{}, functions: map[string]*function{}, label: v.Label}
	for _, root := range v.Roots {
		if err := l.CheckName(root.Name); err != nil {
			return nil, err
		}
		r, err := newRoot(root, v.Ref)
		if err != nil {
			return nil, err
		}
		l.roots[root.Name] = r
	}
	for _, f := range v.Functions {
		if err := l.CheckName(f.Name); err != nil {
			return nil, err
		}
		made, err := newFunction(f)
		if err != nil {
			return nil, err
		}
		l.functions[f.Name] = made
	}
	return l, nil
}

// CheckName tells why a name cannot be given to a subject of a rule: because it
// means something already, or is not spelled like a name.
func (l *Language) CheckName(name string) error {
	switch {
	case !isName(name):
		return fmt.Errorf("%q is not a name, expected lower-case letters, digits and _, beginning with a letter", name)
	case reserved[name] || l.roots[name] != nil || l.functions[name] != nil:
		return fmt.Errorf("%q means something already, expected another name", name)
	}
	return nil
}

func isName(name string) bool {
	for i, r := range name {
		if !(r >= 'a' && r <= 'z' || i > 0 && (r >= '0' && r <= '9' || r == '_')) {
			return false
		}
	}
	return name != ""
}

func newRoot(root Root, place func(any) document.Ref) (*rootName, error) {
	s, convert, ok := shapeOf(root.Type)
	if !ok || s.class != thingClass && s.class != listClass {
		return nil, fmt.Errorf("root %q has type %v, expected a pointer to a struct or a slice", root.Name, root.Type)
	}
	get := &operation{name: root.Name, result: s, scoped: true}
	get.call = func(args ...any) (any, error) { return args[0].(*Scope).root(get, root, convert), nil }
	need := &operation{name: root.Name, result: s, scoped: true, call: func(args ...any) (any, error) {
		scope := args[0].(*Scope)
		v := scope.root(get, root, convert)
		if !isNil(v) {
			return v, nil
		}
		missing := &document.Missing{Key: root.Name}
		if place != nil {
			missing.Ref = place(scope.facts)
		}
		return nil, missing
	}}
	return &rootName{s, get, need}, nil
}

// root gets a part of the facts once for all evaluations of a scope.
func (s *Scope) root(of *operation, root Root, convert converter) any {
	v, ok := s.roots[of]
	if !ok {
		if v = root.Get(s.facts); v != nil {
			v = convert(reflect.ValueOf(v))
		}
		s.roots[of] = v
	}
	return v
}

func isNil(v any) bool {
	if v == nil {
		return true
	}
	rv := reflect.ValueOf(v)
	return rv.Kind() == reflect.Pointer && rv.IsNil()
}

func sortedKeys[T any](m map[string]T) []string {
	keys := make([]string, 0, len(m))
	for key := range m {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	return keys
}
