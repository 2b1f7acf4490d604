package document

import "iter"

// nodes holds the nodes of a document by their numbers. The root has number 0.
type nodes struct {
	pieces []*piece
	count  int
	named  map[keyed]*node // values of tables that hold many
}

// piece is memory for some nodes: 8 KiB.
type piece [256]node

const _ = uint16(MaxValues) // so many numbers there are

// keyed is a key of the table that has a number.
type keyed struct {
	table uint16
	key   string
}

func (s *nodes) node(number uint16) *node {
	return &s.pieces[number>>8][number&0xff]
}

// more gives one more node.
func (s *nodes) more() *node {
	number := uint16(s.count)
	if number&0xff == 0 {
		s.pieces = append(s.pieces, new(piece))
	}
	s.count++
	n := s.node(number)
	n.number = number
	return n
}

// first is the first value of a table or array, nil when it holds nothing.
func (s *nodes) first(of *node) *node {
	if of.last == 0 {
		return nil
	}
	return s.node(s.node(of.last).next)
}

// after is the value after another one of a table or array; nil after the last.
func (s *nodes) after(n, of *node) *node {
	if n.number == of.last {
		return nil
	}
	return s.node(n.next)
}

// children gives what a table or array holds, in file order.
func (s *nodes) children(of *node) iter.Seq[*node] {
	return func(yield func(*node) bool) {
		for c := s.first(of); c != nil && yield(c); c = s.after(c, of) {
		}
	}
}

// element is the value at a place of an array, from 0.
func (s *nodes) element(of *node, index int) *node {
	n := s.first(of)
	for range index {
		n = s.after(n, of)
	}
	return n
}

// size is how many values a table or array holds.
func (s *nodes) size(of *node) int {
	if of.last == 0 {
		return 0
	}
	return int(s.node(of.last).index) + 1
}

// latest is the table that a header continues: of a list of tables, the last.
func (s *nodes) latest(n *node) *node {
	if n.origin == repeated {
		return s.node(n.last)
	}
	return n
}

// link makes a node the last one of a table or array.
func (s *nodes) link(n, under *node) {
	if under.last == 0 {
		n.next = n.number
	} else {
		before := s.node(under.last)
		n.index, n.next, before.next = before.index+1, before.next, n.number
	}
	under.last = n.number
}
