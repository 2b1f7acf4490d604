package expression

// statement is a comparison as it came out, before it is written out: most of
// them never are.
type statement struct {
	term        term
	symbol      string // of a comparison of two values; empty for what is true or false by itself
	truth       Truth
	left, right any // left alone where there is no symbol
	of          []any
	lacks       *pile[lack]
	reads       *pile[Read]
}

// state keeps a statement where somebody asks for them.
func (r *run) state(s statement) *pile[statement] {
	if t, ok := s.term.(*comparison); !r.explaining || r.depth == WithFigures && !(ok && t.sized()) {
		return nil
	}
	s.of = append([]any(nil), r.elements...)
	return pileOf(s)
}

// comparison writes a statement out, or its negation.
func (c *compiled) comparison(s statement, opposite bool) Comparison {
	at := s.term.span()
	missing, reasons := listed(s.lacks)
	w := Comparison{Text: c.text(at), Operator: s.symbol, Found: s.left, Required: s.right, Truth: s.truth, Negated: opposite, Of: s.of,
		Offset: at.from, Length: at.to - at.from, Reads: inputs(s.reads), Missing: missing, Undetermined: reasons}
	if t, ok := s.term.(*comparison); ok {
		w.Difference = t.wanting(s.left, s.right)
	}
	if opposite {
		w.Truth = -w.Truth
	}
	switch {
	case s.symbol == "":
		w.Operator, w.Required = "==", !opposite
	case opposite:
		w.Operator = opposites[s.symbol]
	}
	return w
}

// wanting is how far found is from required; nil where the values have no
// difference, as an infinity has none.
func (t *comparison) wanting(found, required any) any {
	if found == nil || required == nil {
		return nil
	}
	if _, ordered := comparisons[t.symbol]; !ordered {
		return nil
	}
	minus := theCalculus().binary[operatorKey{"-", t.right.shape().goType, t.left.shape().goType}]
	if minus == nil {
		return nil
	}
	v, err := minus.call(required, found)
	if err != nil || infinite(v) {
		return nil
	}
	return v
}
