package document

// Text is a text value as it stands in the file.
type Text struct {
	Value string
	lines lines
	at    []int // offset of each character of Value in the source, and of its end
}

// Text gives the text value of a key; ok is false when the table does not have
// it or it is no text.
func (r Ref) Text(key string) (t Text, ok bool) {
	c := r.child(key)
	if c == nil || c.kind != text {
		return Text{}, false
	}
	return Text{Value: c.value.(string), lines: r.tree.lines}, true
}

// Position is the place in the file of the character at an offset, counted in
// characters from 0.
func (t Text) Position(offset int) Position { return t.Span(offset, 1) }

// Span is the place in the file of length characters from an offset on; of
// characters on several lines, those on the first.
func (t Text) Span(offset, length int) Position {
	if len(t.at) == 0 {
		return Position{}
	}
	last := len(t.at) - 1
	from := max(0, min(offset, last))
	to := max(from, min(offset+length, last))
	return t.lines.position(span{t.at[from], t.at[to]})
}
