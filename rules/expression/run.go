package expression

import (
	"errors"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

// run is one evaluation in three-valued logic. It looks at every part, so that
// the order of parts does not matter, and keeps what each result rests on.
type run struct {
	scope *Scope
	*compiled
	depth      Depth
	explaining bool        // comparisons are kept: not those of a part that stands for itself
	elements   []any       // of the lists around, outermost first
	named      []*named    // values of let, by slot
	stack      []any       // arguments of operations under way
	reads      *pile[Read] // of the part being evaluated; nil where nobody asks
}

// lack is why a value is not known: an input is missing, or a person must judge.
type lack struct {
	missing *document.Missing
	reason  string
}

// result is a value, or why it is not known.
type result struct {
	value any
	lacks *pile[lack]
}

// err gives what is lacking as an error.
func (v result) err() error {
	missing, reasons := listed(v.lacks)
	switch {
	case len(missing) == 1:
		return &missing[0]
	case len(missing) > 1:
		return document.MissingAll(missing)
	}
	return &Undetermined{strings.Join(reasons, "; ")}
}

func known(v any) result { return result{value: v} }

// unless gives a value that is known where nothing is lacking.
func unless(lacks *pile[lack], v any) result {
	if lacks != nil {
		return result{lacks: lacks}
	}
	return known(v)
}

// verdict is the truth of a condition and the comparisons that justify it.
type verdict struct {
	truth Truth
	parts *pile[statement]
	reads *pile[Read] // of lists, apart from those of the comparisons
	lacks *pile[lack] // when unknown
}

// reversed is the verdict of the negation.
func (v verdict) reversed() verdict {
	v.truth, v.parts = -v.truth, v.parts.reversed()
	return v
}

func (v verdict) result() result {
	if v.truth == Unknown {
		return result{lacks: v.lacks}
	}
	return known(v.truth == True)
}

// stopped carries an error that ends an evaluation up to its caller.
type stopped struct{ err error }

// perform does an operation whose arguments are known, of which it keeps nothing.
func (r *run) perform(t term, op *operation, args ...any) result {
	from := r.frame(op)
	r.stack = append(r.stack, args...)
	return r.done(t, op, from)
}

// frame begins the arguments of an operation on the stack.
func (r *run) frame(op *operation) (from int) {
	from = len(r.stack)
	if op.scoped {
		r.stack = append(r.stack, r.scope)
	}
	return from
}

// done does an operation with its arguments on the stack, and takes them off.
func (r *run) done(t term, op *operation, from int) result {
	v, err := op.call(r.stack[from:]...)
	r.stack = r.stack[:from]
	if err == nil {
		return known(v)
	}
	return r.lacking(t, op.computes, err)
}

// lacking is the result of a term that gave an error. Where the error comes from the
// values, it says which part of the text they stand in.
func (r *run) lacking(t term, computes bool, err error) result {
	lacks := lacksOf(err)
	if lacks == nil {
		panic(stopped{err})
	}
	if computes {
		for i := range lacks.items {
			lacks.items[i].reason += " in " + r.text(t.span())
		}
	}
	return result{lacks: lacks}
}

// lacksOf reads an error as a lack; nil for any other failure.
func lacksOf(err error) *pile[lack] {
	var one *document.Missing
	var several document.MissingAll
	var judge *Undetermined
	switch {
	case errors.As(err, &several):
		lacks := &pile[lack]{}
		for i := range several {
			lacks.items = append(lacks.items, lack{missing: &several[i]})
		}
		return lacks
	case errors.As(err, &one):
		return pileOf(lack{missing: one})
	case errors.As(err, &judge):
		return pileOf(lack{reason: judge.Reason})
	}
	return nil
}

// all evaluates terms onto the stack; the lacks of all of them come together.
func (r *run) all(terms []term) *pile[lack] {
	var few [4]*pile[lack]
	lacks := few[:0]
	for _, t := range terms {
		v := t.value(r)
		r.stack = append(r.stack, v.value)
		if v.lacks != nil {
			lacks = append(lacks, v.lacks)
		}
	}
	return together(lacks...)
}

// read notes that a key was read.
func (r *run) read(ref document.Ref, key string) {
	if r.reads != nil {
		r.reads.items = append(r.reads.items, Read{ref, key})
	}
}

// apart evaluates something with a pile of reads of its own, which also counts
// towards the reads around it.
func (r *run) apart(f func()) *pile[Read] {
	around := r.reads
	if around == nil {
		f()
		return nil
	}
	own := &pile[Read]{}
	r.reads = own
	f()
	r.reads = around
	around.piles = append(around.piles, own)
	return own
}

// readAgain counts reads towards another part that rests on them.
func (r *run) readAgain(reads *pile[Read]) {
	if r.reads != nil && reads != nil {
		r.reads.piles = append(r.reads.piles, reads)
	}
}

// plain tells whether nobody asks for more than truths and values.
func (r *run) plain() bool { return !r.explaining && r.reads == nil }

// plainly evaluates without comparisons being kept.
func (r *run) plainly(f func() result) result {
	before := r.explaining
	r.explaining = false
	v := f()
	r.explaining = before
	return v
}
