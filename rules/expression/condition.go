package expression

import (
	"fmt"
	"sync"
)

// Condition is a compiled expression that is true, false or unknown. It is safe
// for concurrent use, each goroutine with its own Scope.
type Condition struct {
	language *Language
	text     string
	names    Names

	once  sync.Once
	whole *compiled
	err   error
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
	return &Condition{language: l, text: text, names: n}
}

// settled compiles the condition at the first call.
func (c *Condition) settled() (*compiled, error) {
	c.once.Do(func() { c.whole, c.err = c.language.condition(c.text, c.names) })
	return c.whole, c.err
}

func (l *Language) condition(text string, n Names) (*compiled, error) {
	c, err := l.compile(text, n)
	if err != nil {
		return nil, err
	}
	if !c.root.shape().is(truthShape) {
		return nil, c.mistake(c.root, "", fmt.Sprintf("%q is %v, expected a condition that is true or false", c.text(c.root.span()), c.root.shape()))
	}
	return c, nil
}

// Depth is how much an evaluation tells beside the truth and, where that is
// unknown, what is lacking.
type Depth int

// The depths of an evaluation.
const (
	Bare        Depth = iota // no more, and it goes no further than the truth asks for
	WithFigures              // the comparisons of figures by size too
	WithReads                // all comparisons, and what they read
)

// Figures tells whether the condition compares figures by size.
func (c *Condition) Figures() bool {
	settled, err := c.settled()
	return err == nil && settled.sized
}

// Truth is Evaluate for the truth alone.
func (c *Condition) Truth(s *Scope) (Truth, error) {
	e, err := c.Evaluate(s, Bare)
	return e.Truth, err
}

// Explain is Evaluate with everything.
func (c *Condition) Explain(s *Scope) (Explanation, error) { return c.Evaluate(s, WithReads) }

// Evaluate evaluates the condition and says why it came out as it did. The error is
// ErrSteps, or what a function of the vocabulary returned beside Missing and
// Undetermined.
func (c *Condition) Evaluate(s *Scope, depth Depth) (Explanation, error) {
	settled, err := c.settled()
	if err != nil {
		return Explanation{}, err
	}
	r, err := s.begin(settled)
	if err != nil {
		return Explanation{}, err
	}
	r.depth, r.explaining = depth, depth > Bare
	if depth >= WithReads {
		r.reads = &pile[Read]{}
	}
	var v verdict
	if err := r.guarded(func() { v = r.judge(settled.root) }); err != nil {
		return Explanation{}, err
	}
	if depth == Bare && v.lacks == nil {
		return Explanation{Truth: v.truth}, nil
	}
	return settled.explanation(v), nil
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
