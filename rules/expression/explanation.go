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

	bare bool // true or false by itself: Required is what it should be
}

// Read is one key of the design that was read; an empty key stands for the
// whole thing, as a function received it.
type Read struct {
	Ref document.Ref
	Key string
}

// compared keeps a comparison of two values.
func (r *run) compared(t *comparison, truth Truth, left, right result, lacks *pile[lack], reads *pile[Read]) *pile[Comparison] {
	if !r.explaining {
		return nil
	}
	c := r.comparison(t, truth, lacks, reads)
	c.Operator, c.Found, c.Required = t.symbol, left.value, right.value
	if c.Found != nil && c.Required != nil {
		c.Difference = wanting(t, c.Found, c.Required)
	}
	return pileOf(c)
}

// bare keeps a part that is true or false by itself; as it stands, it should be true.
func (r *run) bare(t term, truth Truth, v result, reads *pile[Read]) *pile[Comparison] {
	if !r.explaining {
		return nil
	}
	c := r.comparison(t, truth, v.lacks, reads)
	c.Operator, c.Required, c.bare = "==", true, true
	if truth != Unknown {
		c.Found = v.value
	}
	return pileOf(c)
}

func (r *run) comparison(t term, truth Truth, lacks *pile[lack], reads *pile[Read]) Comparison {
	at := t.span()
	missing, reasons := listed(lacks)
	return Comparison{Text: r.text(at), Truth: truth, Of: append([]any(nil), r.elements...),
		Offset: at.from, Length: at.to - at.from, Reads: inputs(reads), Missing: missing, Undetermined: reasons}
}

// opposite is the comparison as it must hold for its negation to be true.
func (c Comparison) opposite() Comparison {
	c.Truth, c.Negated = -c.Truth, !c.Negated
	if c.bare {
		c.Required = !c.Required.(bool)
		return c
	}
	c.Operator = opposites[c.Operator]
	return c
}

// wanting is how far found is from required; nil where the values have no
// difference, as an infinity has none.
func wanting(t *comparison, found, required any) any {
	if _, ordered := comparisons[t.symbol]; !ordered {
		return nil
	}
	minus := theCalculus.binary[operatorKey{"-", t.right.shape().goType, t.left.shape().goType}]
	if minus == nil {
		return nil
	}
	v, err := minus.call(required, found)
	if err != nil || infinite(v) {
		return nil
	}
	return v
}

// reversed is the verdict of the negation.
func (v verdict) reversed() verdict {
	v.truth, v.parts = -v.truth, v.parts.reversed()
	return v
}

// explanation writes a verdict out.
func (v verdict) explanation() Explanation {
	e := Explanation{Truth: v.truth}
	e.Missing, e.Undetermined = listed(v.lacks)
	reads := []*pile[Read]{v.reads}
	v.parts.each(func(c Comparison, opposite bool) {
		if opposite {
			c = c.opposite()
		}
		e.Parts = append(e.Parts, c)
		reads = append(reads, &pile[Read]{items: c.Reads})
	})
	e.Reads = inputs(together(reads...))
	return e
}

// listed gives what is lacking, each once, in the order of meeting.
func listed(lacks *pile[lack]) (missing []document.Missing, reasons []string) {
	seenInput, seenReason := map[Read]bool{}, map[string]bool{}
	lacks.each(func(l lack, _ bool) {
		switch {
		case l.missing != nil:
			if key := (Read{l.missing.Ref, l.missing.Key}); !seenInput[key] {
				seenInput[key] = true
				missing = append(missing, *l.missing)
			}
		case !seenReason[l.reason]:
			seenReason[l.reason] = true
			reasons = append(reasons, l.reason)
		}
	})
	return missing, reasons
}

// inputs gives what was read, each once.
func inputs(reads *pile[Read]) []Read {
	var list []Read
	seen := map[Read]bool{}
	reads.each(func(read Read, _ bool) {
		if !seen[read] {
			seen[read] = true
			list = append(list, read)
		}
	})
	return list
}
