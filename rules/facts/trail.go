package facts

import (
	"errors"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules/expression"
)

// Line is one computed value and how it came about: enough to follow it with a
// pocket calculator.
type Line struct {
	Name    string
	Of      string // the thing it is about, as people call it; empty for the dwelling
	Formula string // in the names of the inputs
	Inputs  []Input
	Value   any                 // a quantity, number, text or truth value; nil when not known
	Missing document.MissingAll // inputs that the design would have to give
	Trouble string              // why it cannot be computed although every input is there
	Taken   string              // what was assumed
	Note    string              // what else a reader must know
	Source  string
	House   bool // about the pressure of the house: pascals whatever the units of the design
}

// Input is one value that a line computes with.
type Input struct {
	Name  string
	Value any
	Ref   document.Ref // where the design gives it; zero for a line above
	Key   string
}

// result is a computed value with its line, or why there is none.
type result[T any] struct {
	value T
	err   error
	line  *Line
}

// get gives the value as functions of rules do: what cannot be computed is for a
// person to judge.
func (r result[T]) get() (T, error) { return r.value, forAPerson(r.err) }

// forAPerson leaves an error that names missing inputs as it is; any other is
// something that a person must judge.
func forAPerson(err error) error {
	if err == nil || missingOf(err) != nil {
		return err
	}
	return &expression.Undetermined{Reason: err.Error()}
}

// missingOf is the inputs that an error says are missing; none where it says anything
// else.
func missingOf(err error) document.MissingAll {
	var many document.MissingAll
	var one *document.Missing
	switch {
	case errors.As(err, &many):
		return many
	case errors.As(err, &one):
		return document.MissingAll{*one}
	}
	return nil
}

// working gathers what a line computes with.
type working struct {
	line    Line
	listing bool // the line lists its inputs
	missing document.MissingAll
	trouble error
}

// lineKey tells the lines of a design apart.
type lineKey struct{ name, of string }

// compute works out a line once for a design. gather collects the inputs and
// gives the computation, which runs only when nothing is missing.
func compute[T any](f *Facts, line Line, gather func(w *working) func() (T, error)) result[T] {
	key := lineKey{line.Name, line.Of}
	if done, ok := f.computed[key]; ok {
		return done.(result[T])
	}
	r := workOut(line, f.listing, gather)
	f.computed[key] = r
	return r
}

func workOut[T any](line Line, listing bool, gather func(w *working) func() (T, error)) result[T] {
	w := &working{line: line, listing: listing}
	calculate := gather(w)
	r := result[T]{line: &w.line, err: w.err()}
	if r.err == nil {
		r.value, r.err = calculate()
	}
	r.line.settle(r.value, r.err)
	return r
}

func (w *working) err() error {
	switch {
	case len(w.missing) > 0:
		return w.missing
	default:
		return w.trouble
	}
}

func (l *Line) settle(value any, err error) {
	if err == nil {
		l.Value = value
		return
	}
	if l.Missing = missingOf(err); l.Missing == nil {
		l.Trouble = err.Error()
	}
}

// given takes an input that the design may leave out.
func given[T any](w *working, name string, value *T, ref document.Ref, key string) T {
	if value == nil {
		w.lack(document.Missing{Ref: ref, Key: key})
		var none T
		return none
	}
	if w.listing {
		w.take(Input{name, *value, ref, key})
	}
	return *value
}

// take lists an input once, where inputs are listed.
func (w *working) take(in Input) {
	if !w.listing {
		return
	}
	for _, known := range w.line.Inputs {
		if known.Name == in.Name && known.Key == in.Key && known.Ref == in.Ref {
			return
		}
	}
	w.line.Inputs = append(w.line.Inputs, in)
}

func (w *working) lack(m document.Missing) {
	for _, known := range w.missing {
		if known.Ref.KeyName(known.Key) == m.Ref.KeyName(m.Key) {
			return
		}
	}
	w.missing = append(w.missing, m)
}

// from takes the value of another line.
func from[T any](w *working, name string, r result[T]) T {
	return fromError(w, name, r.value, r.err)
}

// fromError takes a value that another function worked out.
func fromError[T any](w *working, name string, value T, err error) T {
	switch {
	case err != nil:
		w.fail(err)
	case w.listing:
		w.take(Input{Name: name, Value: value})
	}
	return value
}

// fail takes an error of what a line computes with.
func (w *working) fail(err error) {
	missing := missingOf(err)
	for _, m := range missing {
		w.lack(m)
	}
	if missing == nil && w.trouble == nil {
		w.trouble = err
	}
}
