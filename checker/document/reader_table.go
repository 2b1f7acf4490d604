package document

import "fmt"

// define makes the node for the value of a dotted key of a table. A key that
// cannot be added gives a problem and a node outside the document.
func (r *reader) define(into *node, parts []part) *node {
	section, leaf := into, parts[len(parts)-1]
	for _, p := range parts[:len(parts)-1] {
		next := r.child(into, p.name)
		switch {
		case next == nil:
			next = r.make(into, p)
			next.origin = dotted
			r.within[next] = section
			r.hang(next, into)
		case next.origin != dotted || r.within[next] != section:
			r.clash(next, p.at, fixed)
			next = r.make(into, p)
		}
		into = next
	}
	n := r.make(into, leaf)
	if r.marks.may(into, n.mark) {
		if first := r.child(into, leaf.name); first != nil {
			r.clash(first, leaf.at, twice)
			return n
		}
	}
	r.hang(n, into)
	return n
}

// hang adds a node to the table or list that it was made for.
func (r *reader) hang(n, under *node) {
	r.link(n, under)
	r.marks.note(under, n.mark)
	if under.kind != table || n.index < few {
		return
	}
	if n.index > few {
		r.register(n)
		return
	}
	for c := range r.children(under) {
		r.register(c)
	}
}

// register makes a value of a table known by its key.
func (r *reader) register(n *node) {
	if r.named == nil {
		r.named = map[keyed]*node{}
	}
	r.named[keyed{n.parent, r.name(n)}] = n
}

// open finds or makes the table that a header names.
func (r *reader) open(parts []part, at span, many bool) *node {
	into, leaf := r.root(), parts[len(parts)-1]
	for _, p := range parts[:len(parts)-1] {
		into = r.enter(into, p)
	}
	if many {
		return r.openOneMore(into, leaf, at)
	}
	n := r.child(into, leaf.name)
	switch {
	case n == nil:
		n = r.make(into, leaf)
		r.hang(n, into)
	case n.origin == headed, n.origin == dotted:
		r.clash(n, at, "table %.64q is given twice, first on line %d")
		return n
	case n.origin == repeated:
		r.clash(n, at, "table %.64q is a list since line %d, expected a header in double brackets")
		return r.make(into, leaf)
	case n.origin == closed:
		r.clash(n, at, twice)
		return r.make(into, leaf)
	}
	r.beyond = r.beyond || n.origin == implied // which headers of its own tables named before
	n.origin, n.key, n.at = headed, leaf.at, at
	return n
}

// openOneMore adds a table to the list that a [[header]] names.
func (r *reader) openOneMore(into *node, leaf part, at span) *node {
	list := r.child(into, leaf.name)
	switch {
	case list == nil:
		list = r.makeList(into, leaf, at)
		r.hang(list, into)
	case list.origin == headed:
		r.clash(list, at, "table %.64q is one table since line %d, expected double brackets there too")
		list = r.makeList(into, leaf, at)
	case list.origin != repeated:
		r.clash(list, at, twice)
		list = r.makeList(into, leaf, at)
	}
	n := r.make(list, leaf)
	n.origin, n.at = headed, at
	r.hang(n, list)
	return n
}

func (r *reader) makeList(into *node, leaf part, at span) *node {
	list := r.make(into, leaf)
	list.kind, list.origin, list.at = array, repeated, at
	return list
}

// enter goes down one part of a header that is not the last.
func (r *reader) enter(into *node, p part) *node {
	n := r.child(into, p.name)
	switch {
	case n == nil:
		n = r.make(into, p)
		n.origin = implied
		r.hang(n, into)
	case n.origin == closed:
		r.clash(n, p.at, fixed)
		n = r.make(into, p)
	}
	return r.latest(n)
}

const (
	twice = "key %.64q is given twice, first on line %d"
	fixed = "key %.64q stands on line %d already, nothing can be added to it here"
)

// clash reports a key that stands where an earlier one does. The message takes
// the key and the line of the earlier one.
func (r *reader) clash(first *node, at span, message string) {
	if len(r.problems) > MaxProblems {
		return
	}
	r.problems = append(r.problems, Problem{
		Position: r.lines.position(at),
		Path:     r.path(first),
		Message:  fmt.Sprintf(message, r.name(first), r.lines.position(first.heading()).Line),
	})
}
