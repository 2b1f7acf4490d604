package expression

import (
	"errors"
	"fmt"
	"sync"

	"github.com/expr-lang/expr/vm"
)

// Condition is a compiled expression that is true, false or unknown. It is safe
// for concurrent use, each goroutine with its own Scope.
type Condition struct {
	settled func() (compiled, error)    // compiles at the first call
	fast    func() (*vm.Program, error) // for the machine, likewise
}

// Condition compiles a boolean expression. The error is an *Error.
func (l *Language) Condition(text string, n Names) (*Condition, error) {
	c := l.KnownCondition(text, n)
	if _, err := c.settled(); err != nil {
		return nil, err
	}
	return c, nil
}

// KnownCondition is Condition for a text that is known to compile, such as one
// that ships with the program: it is compiled when it is first evaluated. A
// mistake in it after all is the error of every evaluation.
func (l *Language) KnownCondition(text string, n Names) *Condition {
	c := &Condition{settled: sync.OnceValues(func() (compiled, error) { return l.condition(text, n) })}
	c.fast = sync.OnceValues(func() (*vm.Program, error) {
		settled, err := c.settled()
		if err != nil {
			return nil, err
		}
		return program(settled.root)
	})
	return c
}

func (l *Language) condition(text string, n Names) (compiled, error) {
	c, err := l.compile(text, n)
	if err != nil {
		return compiled{}, err
	}
	if !c.root.shape().is(truthShape) {
		return compiled{}, c.mistake(c.root, "", fmt.Sprintf("%q is %v, expected a condition that is true or false", c.text(c.root.span()), c.root.shape()))
	}
	return c, nil
}

// Truth evaluates the condition. The error is ErrSteps, or what a function of
// the vocabulary returned beside Missing and Undetermined.
func (c *Condition) Truth(s *Scope) (Truth, error) {
	fast, err := c.fast()
	if err != nil {
		return Unknown, err
	}
	if err := s.begin(); err != nil {
		return Unknown, err
	}
	v, err := s.machine.Run(fast, s)
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
	return c.ExplainUnless(s, func(Truth) bool { return false })
}

// ExplainUnless is Explain where a truth that is clear by itself needs no reasons:
// it comes alone, for less work.
func (c *Condition) ExplainUnless(s *Scope, clear func(Truth) bool) (Explanation, error) {
	if err := s.begin(); err != nil {
		return Explanation{}, err
	}
	if clear(True) || clear(False) {
		fuel := s.fuel
		if v, err := c.judge(s, false); err == nil && clear(v.truth) {
			return Explanation{Truth: v.truth}, nil
		}
		s.fuel = fuel // to explain costs no more than once
	}
	v, err := c.judge(s, true)
	if err != nil {
		return Explanation{}, err
	}
	settled, _ := c.settled() // as it was judged
	return settled.explanation(v), nil
}

func (c *Condition) judge(s *Scope, explaining bool) (v verdict, err error) {
	settled, err := c.settled()
	if err != nil {
		return verdict{}, err
	}
	s.steps = maxSteps
	r := &run{scope: s, compiled: settled, explaining: explaining}
	if explaining {
		r.reads = &pile[Read]{}
	}
	err = r.guarded(func() { v = r.judge(settled.root) })
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
