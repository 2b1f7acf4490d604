package reportfmt

import (
	"bytes"
	"io"
	"iter"
	"strings"
	"unicode"

	"github.com/fatih/color"
)

// Columns of a notice: the number of an item hangs to the left of its text, and
// the values of an item stand in one column behind their labels.
const (
	usualWidth  = 80
	leastWidth  = 48
	itemIndent  = 6
	labelWidth  = 13
	headerWidth = 15
)

// page collects the lines of a notice. All text reaches it in one of its
// methods, which make it visible, wrap it and only then colour it.
type page struct {
	out     bytes.Buffer
	width   int
	colour  bool
	changes *changes
}

func newPage(o Options) *page {
	if o.Width == 0 {
		o.Width = usualWidth
	}
	return &page{width: max(o.Width, leastWidth), colour: o.Color}
}

// flush hands over what was written.
func (p *page) flush(to io.Writer) error {
	_, err := p.out.WriteTo(to)
	return err
}

// style is how a piece of text is shown where colours are.
type style []color.Attribute

var (
	plain   style
	strong  = style{color.Bold}
	subdued = style{color.Faint}
)

// paint colours a text on its own, whatever the process's terminal is.
func (p *page) paint(s style, text string) string {
	if !p.colour || len(s) == 0 || text == "" {
		return text
	}
	c := color.New(s...)
	c.EnableColor()
	return c.Sprint(text)
}

func (p *page) blank() { p.out.WriteByte('\n') }

// prose writes wrapped text at an indent.
func (p *page) prose(indent int, s style, text string) {
	p.hang(strings.Repeat(" ", indent), plain, s, text)
}

// item writes the first line of a numbered or marked entry.
func (p *page) item(mark string, s style, title string) {
	p.hang(padLeft(mark, itemIndent-2)+"  ", s, strong, title)
}

// field writes one labelled value of an entry; nothing when there is no value.
func (p *page) field(label string, s style, text string) {
	if text != "" {
		p.hang(strings.Repeat(" ", itemIndent)+padRight(label, labelWidth), subdued, s, text)
	}
}

// heading writes one labelled value of the head of a notice.
func (p *page) heading(label, text string) {
	p.hang(padRight(label, headerWidth), subdued, plain, text)
}

// hang writes text behind a lead; further lines are indented by the lead's width.
// No line begins with two colons: a build host would take it for a command.
func (p *page) hang(lead string, leadStyle, s style, text string) {
	indent := columns(lead)
	width := p.width - indent
	if strings.Contains(text, "::") {
		width-- // room for what noCommand adds
	}
	for _, line := range wrap(oneLine(text), width) {
		line = noCommand(line, `\`)
		p.out.WriteString(strings.TrimRight(p.paint(leadStyle, lead)+p.paint(s, line), " "))
		p.blank()
		lead, leadStyle = strings.Repeat(" ", indent), plain
	}
}

// wrap breaks a text whose words stand one space apart into lines of at most the
// given columns, and inside a word only where the word alone is longer. An empty text
// is one line.
func wrap(text string, width int) []string {
	var lines []string
	from, to, used := 0, 0, 0 // of the last line
	at := 0                   // where the next piece begins
	for word := range strings.SplitSeq(text, " ") {
		first := true
		for piece := range pieces(word, width) {
			size := columns(piece)
			if first && from < to && used+1+size <= width {
				used += 1 + size
			} else {
				if from < to {
					lines = append(lines, text[from:to])
				}
				from, used = at, size
			}
			at += len(piece)
			to, first = at, false
		}
		at++ // the space
	}
	return append(lines, text[from:to])
}

// pieces cuts a word into parts of at most the given columns, all but the last
// as long as they may be. A word that fits is one part.
func pieces(word string, width int) iter.Seq[string] {
	return func(yield func(string) bool) {
		start, used := 0, 0
		for i, r := range word {
			size := runeColumns(r)
			if used+size > width && i > start {
				if !yield(word[start:i]) {
					return
				}
				start, used = i, 0
			}
			used += size
		}
		yield(word[start:])
	}
}

// columns is the width of a text on a terminal.
func columns(s string) int {
	n := 0
	for _, r := range s {
		n += runeColumns(r)
	}
	return n
}

// runeColumns counts two for East Asian letters and none for combining marks.
func runeColumns(r rune) int {
	switch {
	case r < 0x300:
		return 1
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	case unicode.In(r, unicode.Han, unicode.Hangul, unicode.Hiragana, unicode.Katakana):
		return 2
	}
	return 1
}

func padRight(s string, width int) string { return s + strings.Repeat(" ", max(width-columns(s), 0)) }
func padLeft(s string, width int) string  { return strings.Repeat(" ", max(width-columns(s), 0)) + s }
