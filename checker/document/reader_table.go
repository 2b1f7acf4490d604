package document

import "fmt"

// define makes the node for the value of a dotted key of a table. A key that
// cannot be added gives a problem and a node outside the document.
func (r *reader) define(into *node, parts []part) *node {
	section, leaf := into, parts[len(parts)-1]
	for _, p := range parts[:len(parts)-1] {
		next := into.child(p.name)
		switch {
		case next == nil:
			next = r.make(into, p.name, -1, p.at)
			next.origin, next.branch = dotted, r.spare.fork()
			next.within = section
			r.spare.hang(into, next)
		case next.origin != dotted || next.within != section:
			r.clash(next, p.at, fixed)
			next = r.make(into, p.name, -1, p.at)
		}
		into = next
	}
	n := r.make(into, leaf.name, -1, leaf.at)
	if first := into.child(leaf.name); first != nil {
		r.clash(first, leaf.at, twice)
		return n
	}
	r.spare.hang(into, n)
	return n
}

// open finds or makes the table that a header names.
func (r *reader) open(parts []part, at span, many bool) *node {
	into, leaf := r.root, parts[len(parts)-1]
	for _, p := range parts[:len(parts)-1] {
		into = r.enter(into, p)
	}
	if many {
		return r.openOneMore(into, leaf, at)
	}
	n := into.child(leaf.name)
	switch {
	case n == nil:
		n = r.make(into, leaf.name, -1, leaf.at)
		r.spare.hang(into, n)
	case n.origin == headed, n.origin == dotted:
		r.clash(n, at, "table %.64q is given twice, first on line %d")
		return n
	case n.origin == repeated:
		r.clash(n, at, "table %.64q is a list since line %d, expected a header in double brackets")
		return r.make(into, leaf.name, -1, leaf.at)
	case n.origin == closed:
		r.clash(n, at, twice)
		return r.make(into, leaf.name, -1, leaf.at)
	}
	r.beyond = r.beyond || n.origin == implied // which headers of its own tables named before
	n.origin, n.key, n.at = headed, leaf.at, at
	return n
}

// openOneMore adds a table to the list that a [[header]] names.
func (r *reader) openOneMore(into *node, leaf part, at span) *node {
	list := into.child(leaf.name)
	switch {
	case list == nil:
		list = r.make(into, leaf.name, -1, leaf.at)
		list.kind, list.origin, list.at = array, repeated, at
		r.spare.hang(into, list)
	case list.origin == headed:
		r.clash(list, at, "table %.64q is one table since line %d, expected double brackets there too")
		list = r.make(into, leaf.name, -1, leaf.at)
	case list.origin != repeated:
		r.clash(list, at, twice)
		list = r.make(into, leaf.name, -1, leaf.at)
	}
	n := r.make(list, "", len(list.children), leaf.at)
	n.origin, n.at = headed, at
	r.spare.hang(list, n)
	return n
}

// enter goes down one part of a header that is not the last.
func (r *reader) enter(into *node, p part) *node {
	n := into.child(p.name)
	switch {
	case n == nil:
		n = r.make(into, p.name, -1, p.at)
		n.origin = implied
		r.spare.hang(into, n)
	case n.origin == closed:
		r.clash(n, p.at, fixed)
		n = r.make(into, p.name, -1, p.at)
	}
	return n.latest()
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
		Path:     first.path(),
		Message:  fmt.Sprintf(message, first.name, r.lines.position(first.heading()).Line),
	})
}
