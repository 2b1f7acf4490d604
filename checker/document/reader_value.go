package document

import (
	"fmt"
	"strings"
)

// make gives a node that is to hang under parent, within the limits.
func (r *reader) make(parent *node, key part) *node {
	switch {
	case r.count > MaxValues:
		r.fail(key.at, "", "the file has more than %d values", MaxValues)
	case parent.depth == MaxDepth:
		r.fail(key.at, "", "tables and lists stand more than %d deep inside one another", MaxDepth)
	}
	n := r.more()
	n.parent, n.element, n.depth = parent.number, parent.kind == array, parent.depth+1
	n.key, n.at, n.mark = key.at, key.at, markOf(key.name)
	return n
}

// fill reads a value into its node.
func (r *reader) fill(n *node) {
	start := r.at
	switch r.peek() {
	case '"', '\'':
		n.kind = text
		r.text()
	case '[':
		r.at++
		n.kind = array
		r.elements(n, start)
	case '{':
		r.at++
		r.pairs(n, start)
	default:
		r.scalar(n)
	}
	n.at = spanOf(start, r.at)
}

// elements reads the rest of an array.
func (r *reader) elements(n *node, start int) {
	for r.blank(); !r.take(']'); r.blank() {
		if r.end() {
			r.unclosed(start, "list", "]")
		}
		element := r.make(n, part{at: r.next()})
		r.hang(element, n)
		r.fill(element)
		r.separator(start, "list", "]")
	}
}

// pairs reads the rest of an inline table.
func (r *reader) pairs(n *node, start int) {
	around := r.marks
	for r.blank(); !r.take('}'); r.blank() {
		if r.end() {
			r.unclosed(start, "table", "}")
		}
		r.pair(n)
		r.separator(start, "table", "}")
	}
	r.marks = around
	r.beyond = r.beyond || strings.Contains(r.source[start:r.at], "\n")
}

// separator consumes the comma after an element; the closing bracket may come
// without one.
func (r *reader) separator(start int, what, closing string) {
	r.blank()
	switch {
	case r.take(','), r.has(closing):
	case r.end():
		r.unclosed(start, what, closing)
	default:
		hint := fmt.Sprintf("the %s begins on line %d", what, r.lines.position(spanOf(start, start)).Line)
		r.fail(r.next(), hint, "found %s in a %s, expected a comma or %q", r.found(), what, closing)
	}
}

func (r *reader) unclosed(start int, what, closing string) {
	r.fail(spanOf(start, start+1), "", "the %s that begins here is not closed, expected %q", what, closing)
}
