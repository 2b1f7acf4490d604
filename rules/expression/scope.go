package expression

import (
	"errors"

	"github.com/expr-lang/expr/vm"
)

// Scope is what one goroutine evaluates expressions with: the facts of a design,
// the subjects of the moment, and the steps that may still be spent.
type Scope struct {
	Subjects []any // one for each of Names.Variables

	facts   any
	fuel    int // steps left to all evaluations
	steps   int // steps left to the present one
	roots   map[*operation]any
	machine vm.VM
}

const (
	maxSteps     = 100_000
	memoryBudget = 100_000 // elements of lists that one evaluation may make
	lightWork    = 5_000   // steps after which a machine has grown too large to keep
)

// ErrSteps is the error of an evaluation that took too many steps.
var ErrSteps = errors.New("the rule takes too many steps, expected at most 100000 elements and function calls for one evaluation")

// NewScope makes a scope. fuel is the number of steps that all evaluations
// with it may take together; an evaluation costs one step, and one more for
// each element of a list and each function call. The facts must not change
// while the scope is in use.
func NewScope(facts any, fuel int) *Scope {
	return &Scope{facts: facts, fuel: fuel, roots: map[*operation]any{}, machine: vm.VM{MemoryBudget: memoryBudget}}
}

// begin starts an evaluation.
func (s *Scope) begin() error {
	s.steps = maxSteps
	return s.spend(1)
}

// spend pays for steps.
func (s *Scope) spend(steps int) error {
	s.steps -= steps
	s.fuel -= steps
	if s.steps < 0 || s.fuel < 0 {
		return ErrSteps
	}
	return nil
}

// Spent tells whether the steps of all evaluations are used up: every further
// one ends with ErrSteps.
func (s *Scope) Spent() bool { return s.fuel < 0 }

// Left is how many steps all evaluations may still take together.
func (s *Scope) Left() int { return max(s.fuel, 0) }

// renewMachine drops the memory of a machine that has worked hard.
func (s *Scope) renewMachine() { s.machine = vm.VM{MemoryBudget: memoryBudget} }
