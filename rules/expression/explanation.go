package expression

import "github.com/ventlint/ventlint/checker/document"

// Explanation says how a condition came out and why.
type Explanation struct {
	Truth        Truth
	Parts        []Comparison       // those that justify the truth, in the order of the text and of the lists
	Missing      []document.Missing // inputs that would be needed, when unknown
	Undetermined []string           // why a person must judge, when unknown
	Reads        []Read             // inputs of all parts, and of the lists that they come from
}

// Comparison is one comparison of a condition, or one part that is true or
// false by itself, for one set of elements.
type Comparison struct {
	Text         string // as written
	Operator     string // what has to stand between Found and Required
	Found        any    // left side; nil when unknown
	Required     any    // right side; nil when unknown
	Difference   any    // Required - Found, of the same type; nil where that has no meaning
	Truth        Truth  // whether Found stands to Required as Operator says
	Negated      bool   // the text stands under a `not`: Operator is the opposite of the written one
	Of           []any  // elements of the lists that the comparison is about, outermost first
	Offset       int    // of Text in the source, in runes
	Length       int    // of Text in the source, in runes
	Reads        []Read
	Missing      []document.Missing
	Undetermined []string
}

// Read is one key of the design that was read; an empty key stands for the
// whole thing, as a function received it.
type Read struct {
	Ref document.Ref
	Key string
}

// explanation writes a verdict out.
func (c *compiled) explanation(v verdict) Explanation {
	e := Explanation{Truth: v.truth}
	e.Missing, e.Undetermined = listed(v.lacks)
	reads := []*pile[Read]{v.reads}
	v.parts.each(func(s statement, opposite bool) {
		reads = append(reads, s.reads)
		e.Parts = append(e.Parts, c.comparison(s, opposite))
	})
	e.Reads = inputs(together(reads...))
	return e
}

// listed gives what is lacking, each once, in the order of meeting.
func listed(lacks *pile[lack]) (missing []document.Missing, reasons []string) {
	if lacks == nil {
		return nil, nil
	}
	var inputs once[Read]
	var others once[string]
	lacks.each(func(l lack, _ bool) {
		switch {
		case l.missing != nil:
			if inputs.first(Read{l.missing.Ref, l.missing.Key}) {
				missing = append(missing, *l.missing)
			}
		case others.first(l.reason):
			reasons = append(reasons, l.reason)
		}
	})
	return missing, reasons
}

// inputs gives what was read, each once.
func inputs(reads *pile[Read]) []Read {
	var list []Read
	var seen once[Read]
	reads.each(func(read Read, _ bool) {
		if seen.first(read) {
			list = append(list, read)
		}
	})
	return list
}
