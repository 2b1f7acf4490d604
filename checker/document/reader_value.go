package document

import "fmt"

// nodesAtOnce is how many nodes one allocation makes.
const nodesAtOnce = 64

// make gives a node that is to hang under parent, within the limits.
func (r *reader) make(parent *node, name string, index int, key span) *node {
	r.values++
	depth := parent.depth + 1
	switch {
	case r.values > MaxValues:
		r.fail(key, "", "the file has more than %d values", MaxValues)
	case depth > MaxDepth:
		r.fail(key, "", "tables and lists stand more than %d deep inside one another", MaxDepth)
	}
	if len(r.spare) == 0 {
		r.spare = make([]node, nodesAtOnce)
	}
	n := &r.spare[0]
	r.spare = r.spare[1:]
	*n = node{parent: parent, name: name, index: int32(index), key: key, at: key, depth: depth}
	return n
}

// fill reads a value into its node.
func (r *reader) fill(n *node) {
	start := r.at
	switch {
	case r.take("["):
		n.kind = array
		r.elements(n, start)
	case r.take("{"):
		r.pairs(n, start)
	case r.peek() == '"', r.peek() == '\'':
		n.kind, n.value = text, r.text()
	default:
		r.scalar(n)
	}
	n.at = span{start, r.at}
}

// elements reads the rest of an array.
func (r *reader) elements(n *node, start int) {
	for r.blank(); !r.take("]"); r.blank() {
		if r.end() {
			r.unclosed(start, "list", "]")
		}
		element := r.make(n, "", len(n.children), r.next())
		n.add(element)
		r.fill(element)
		r.separator(start, "list", "]")
	}
}

// pairs reads the rest of an inline table.
func (r *reader) pairs(n *node, start int) {
	for r.blank(); !r.take("}"); r.blank() {
		if r.end() {
			r.unclosed(start, "table", "}")
		}
		r.pair(n)
		r.separator(start, "table", "}")
	}
}

// separator consumes the comma after an element; the closing bracket may come
// without one.
func (r *reader) separator(start int, what, closing string) {
	r.blank()
	switch {
	case r.take(","), r.has(closing):
	case r.end():
		r.unclosed(start, what, closing)
	default:
		hint := fmt.Sprintf("the %s begins on line %d", what, r.lines.position(span{start, start}).Line)
		r.fail(r.next(), hint, "found %s in a %s, expected a comma or %q", r.found(), what, closing)
	}
}

func (r *reader) unclosed(start int, what, closing string) {
	r.fail(span{start, start + 1}, "", "the %s that begins here is not closed, expected %q", what, closing)
}
