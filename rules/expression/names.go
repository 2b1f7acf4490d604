package expression

import "reflect"

// Names is what one rule adds to the vocabulary.
type Names struct {
	Variables []Variable       // the subjects of the rule, in the order of Scope.Subjects
	Limits    map[string]any   // limit.NAME: a quantity, number, text or bool; nil when declared but not set
	Tables    map[string]Table // table.NAME(inputs)
}

// Variable is a subject of a rule: its name and the type of the thing.
type Variable struct {
	Name string
	Type reflect.Type
}

// Table is a lookup table of a pack.
type Table interface {
	Inputs() []reflect.Type
	Result() reflect.Type
	// Look takes one argument for each input, of exactly that type.
	Look(args []any) (any, error)
}
