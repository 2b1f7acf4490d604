package expression

import "reflect"

// List is a compiled expression that gives the things a rule ranges over.
type List struct{}

// List compiles a list of things: a root, a list of an earlier subject such as
// `unit.filter`, or filter(...) of one, with a predicate that reads only keys
// that every design gives. The error is an *Error.
func (l *Language) List(source string, n Names) (*List, error) { return nil, &Error{} }

// Elem is the type of the things.
func (l *List) Elem() reflect.Type { return nil }

// Items gives the things, in the order of the design.
func (l *List) Items(s *Scope) ([]any, error) { return nil, nil }
