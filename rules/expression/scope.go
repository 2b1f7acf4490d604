package expression

// Scope is what one goroutine evaluates expressions with: the facts of a design,
// the subjects of the moment, and the steps that may still be spent.
type Scope struct {
	Subjects []any // one for each of Names.Variables

	facts any
	fuel  int
}

// NewScope makes a scope. fuel is the number of steps that all evaluations
// with it may take together; an evaluation costs one step, and one more for
// each element of a list and each function call.
func NewScope(facts any, fuel int) *Scope { return &Scope{facts: facts, fuel: fuel} }
