package expression

import (
	"errors"
	"reflect"

	"github.com/ventlint/ventlint/checker/document"
)

// Vocabulary is what expressions can ask of the facts of one design.
type Vocabulary struct {
	Roots     []Root
	Functions []Function
	// Ref gives the place of the whole design, for a root that it leaves out; may be nil.
	Ref func(facts any) document.Ref
}

// Root is a name that stands for a part of the facts.
type Root struct {
	Name, Doc string
	Type      reflect.Type // pointer to a struct, or slice of such
	// Get gives a value of that type; a nil pointer is a missing part.
	Get func(facts any) any
}

// Function is a computed value. Call is a func(facts F, arguments ...) (T, error);
// an error *document.Missing or document.MissingAll makes the value unknown, an
// *Undetermined one leaves it to a person, any other ends the evaluation.
type Function struct {
	Name, Doc string
	Signature string // as people read it: "distance(a, b) length"
	Call      any
}

// Language compiles expressions over one vocabulary. It is safe for concurrent use.
type Language struct{}

// New prepares a language. It fails on a vocabulary with a name twice, a name
// that the language itself uses, or a type that expressions cannot hold.
func New(v Vocabulary) (*Language, error) { return nil, errors.New("not built yet") }
