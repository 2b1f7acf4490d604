package expression

import "errors"

// Scope is what one goroutine evaluates expressions with: the facts of a design,
// the subjects of the moment, and the steps that may still be spent.
type Scope struct {
	Subjects []any // one for each of Names.Variables

	facts any
	fuel  int // steps left to all evaluations
	steps int // steps left to the present one
	roots map[*operation]any
	lists map[*List][]any // those that are the same for all subjects
	run   run             // the present evaluation
}

const maxSteps = 100_000

// ErrSteps is the error of an evaluation that took too many steps.
var ErrSteps = errors.New("the rule takes too many steps, expected at most 100000 elements and function calls for one evaluation")

// NewScope makes a scope. fuel is the number of steps that all evaluations
// with it may take together; an evaluation costs one step, and one more for
// each element of a list and each function call. The facts must not change
// while the scope is in use.
func NewScope(facts any, fuel int) *Scope {
	return &Scope{facts: facts, fuel: fuel, roots: map[*operation]any{}, lists: map[*List][]any{}}
}

// Refuel sets the steps that all further evaluations may take together.
func (s *Scope) Refuel(steps int) { s.fuel = steps }

// Apart runs evaluations that may take so many steps of their own, and tells how
// many they took.
func (s *Scope) Apart(steps int, evaluate func()) (taken int) {
	fuel := s.fuel
	s.fuel = steps
	evaluate()
	taken = steps - s.fuel
	s.fuel = fuel
	return taken
}

// begin starts an evaluation. It ends the one before, whose memory it uses again.
func (s *Scope) begin(c *compiled) (*run, error) {
	s.steps = maxSteps
	last := &s.run
	s.run = run{scope: s, compiled: c, stack: last.stack[:0], elements: last.elements[:0], named: last.named[:0]}
	return &s.run, s.spend(1)
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
