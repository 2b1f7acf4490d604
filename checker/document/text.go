package document

// Text is a text value as it stands in the file.
type Text struct {
	Value string
	tree  *Tree
	start int // of its quotes
}

// Text gives the text value of a key; ok is false when the table does not have
// it or it is no text.
func (r Ref) Text(key string) (t Text, ok bool) {
	c := r.child(key)
	if c == nil || c.kind != text {
		return Text{}, false
	}
	return Text{Value: r.tree.word(c), tree: r.tree, start: int(c.at.start)}, true
}

// places gives where each character of the value stands in the source, and its end.
func (t Text) places() []int {
	again := &reader{Tree: &Tree{source: t.tree.source, lines: t.tree.lines}, at: t.start, record: true}
	again.text()
	return again.offsets
}

// Position is the place in the file of the character at an offset, counted in
// characters from 0. One past the last is the closing quote.
func (t Text) Position(offset int) Position { return t.Span(offset, 1) }

// Span is the place in the file of length characters from an offset on. Of
// characters on several lines it is the part on the first.
func (t Text) Span(offset, length int) Position {
	if t.tree == nil {
		return Position{}
	}
	at := t.places()
	last := len(at) - 1
	from := max(0, min(offset, last))
	to := max(from, min(from+length, last))
	s := spanOf(at[from], at[to])
	if from == last {
		s.end++ // the quote
	}
	return t.tree.lines.position(s)
}
