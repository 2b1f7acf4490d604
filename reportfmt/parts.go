package reportfmt

import (
	"bytes"
	"cmp"
	"slices"
)

// parts are pieces of a report that wait for their place. What they say lies
// aside; where it lies is kept.
type parts struct {
	aside  Scratch
	list   []part
	size   int64
	text   bytes.Buffer             // of the next part
	change func(text []byte) []byte // what is filled in at the end; nil: nothing
}

type part struct {
	file string // that it is about
	at   int64
	size int
}

// add lays a part aside; one that says nothing is none.
func (p *parts) add(file string, text []byte) error {
	if len(text) == 0 {
		return nil
	}
	if _, err := p.aside.Write(text); err != nil {
		return err
	}
	p.list = append(p.list, part{file, p.size, len(text)})
	p.size += int64(len(text))
	return nil
}

// sort puts the parts into the order of their files.
func (p *parts) sort() {
	slices.SortStableFunc(p.list, func(a, b part) int { return cmp.Compare(a.file, b.file) })
}

// each gives the parts in their order; a text is good until the next one.
func (p *parts) each(f func(text []byte) error) error {
	var space []byte
	for _, part := range p.list {
		space = slices.Grow(space[:0], part.size)
		text := space[:part.size]
		if _, err := p.aside.ReadAt(text, part.at); err != nil {
			return err
		}
		if p.change != nil {
			text = p.change(text)
		}
		if err := f(text); err != nil {
			return err
		}
	}
	return nil
}

// memory is a place for few parts.
type memory struct{ text []byte }

func (m *memory) Write(text []byte) (int, error) {
	m.text = append(m.text, text...)
	return len(text), nil
}

func (m *memory) ReadAt(to []byte, at int64) (int, error) {
	return bytes.NewReader(m.text).ReadAt(to, at)
}
