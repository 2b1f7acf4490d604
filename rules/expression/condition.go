package expression

import (
	"errors"
	"fmt"

	"github.com/expr-lang/expr/vm"
)

// Condition is a compiled expression that is true, false or unknown. It is safe
// for concurrent use, each goroutine with its own Scope.
type Condition struct {
	compiled
	fast *vm.Program
}

// Condition compiles a boolean expression. The error is an *Error.
func (l *Language) Condition(text string, n Names) (*Condition, error) {
	c, err := l.compile(text, n)
	if err != nil {
		return nil, err
	}
	if !c.root.shape().is(truthShape) {
		return nil, c.mistake(c.root, "", fmt.Sprintf("%q is %v, expected a condition that is true or false", c.text(c.root.span()), c.root.shape()))
	}
	fast, err := program(c.root)
	if err != nil {
		return nil, c.mistake(c.root, "", fmt.Sprintf("the expression cannot be compiled: %v", err))
	}
	return &Condition{c, fast}, nil
}

// Truth evaluates the condition. The error is ErrSteps, or what a function of
// the vocabulary returned beside Missing and Undetermined.
func (c *Condition) Truth(s *Scope) (Truth, error) {
	if err := s.begin(); err != nil {
		return Unknown, err
	}
	v, err := s.machine.Run(c.fast, s)
	if maxSteps-s.steps > lightWork {
		s.renewMachine()
	}
	switch {
	case err == nil:
		return truthOf(v.(bool)), nil
	case errors.Is(err, ErrSteps):
		return Unknown, ErrSteps
	}
	// the machine stops at the first unknown value; another part may decide
	verdict, err := c.judge(s, false)
	return verdict.truth, err
}

// Explain evaluates the condition and says why it came out as it did. The
// errors are those of Truth.
func (c *Condition) Explain(s *Scope) (Explanation, error) {
	if err := s.begin(); err != nil {
		return Explanation{}, err
	}
	v, err := c.judge(s, true)
	if err != nil {
		return Explanation{}, err
	}
	return c.explanation(v), nil
}

func (c *Condition) judge(s *Scope, explaining bool) (v verdict, err error) {
	s.steps = maxSteps
	r := &run{scope: s, compiled: c.compiled, explaining: explaining}
	if explaining {
		r.reads = &pile[Read]{}
	}
	err = r.guarded(func() { v = r.judge(c.root) })
	return v, err
}

// guarded runs an evaluation and gives the error that ended it.
func (r *run) guarded(evaluate func()) (err error) {
	defer func() {
		switch p := recover().(type) {
		case nil:
		case stopped:
			err = p.err
		default:
			err = fmt.Errorf("a function of the vocabulary failed: %v", p)
		}
	}()
	evaluate()
	return nil
}
