package document

// Text is a text value as it stands in the file.
type Text struct {
	Value string
	lines lines
	at    []int // where each character of Value stands in the source, and its end
}

// Text gives the text value of a key; ok is false when the table does not have
// it or it is no text.
func (r Ref) Text(key string) (t Text, ok bool) {
	c := r.child(key)
	if c == nil || c.kind != text {
		return Text{}, false
	}
	again := &reader{source: r.tree.source, lines: r.tree.lines, at: c.at.start, record: true}
	value := again.text()
	return Text{Value: value, lines: r.tree.lines, at: again.offsets}, true
}

// Position is the place in the file of the character at an offset, counted in
// characters from 0. One past the last is the closing quote.
func (t Text) Position(offset int) Position { return t.Span(offset, 1) }

// Span is the place in the file of length characters from an offset on. Of
// characters on several lines it is the part on the first.
func (t Text) Span(offset, length int) Position {
	if len(t.at) == 0 {
		return Position{}
	}
	last := len(t.at) - 1
	from := max(0, min(offset, last))
	to := max(from, min(from+length, last))
	s := span{t.at[from], t.at[to]}
	if from == last {
		s.end++ // the quote
	}
	return t.lines.position(s)
}
