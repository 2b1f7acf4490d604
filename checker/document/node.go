package document

// kind is what a value is.
type kind uint8

const (
	table   kind = iota
	array        // of any values; of tables with headers when its origin is repeated
	text         // string
	whole        // integer
	decimal      // float
	truth        // boolean
	moment       // date, time or both
)

// origin is how a table or array came to be, which decides what may be added.
type origin uint8

const (
	closed   origin = iota // written as one value: nothing may be added
	implied                // named by a longer header: [a.b] implies a
	headed                 // has a header of its own: [a], or is one of [[a]]
	dotted                 // named by a dotted key: a.b = 1
	repeated               // list of tables: [[a]]
)

// span is a half-open range of bytes in the source.
type span struct{ start, end int32 }

func spanOf(start, end int) span { return span{int32(start), int32(end)} }

// node is one value of a document with the place where it stands.
type node struct {
	kind   kind
	origin origin
	depth  int16
	index  int32  // place in an array, from 0; -1 elsewhere
	name   string // key in a table
	key    span   // the last part of the key or header that names it
	at     span   // the value; of a table with a header, the header with its brackets
	parent *node
	word   string // a text, without its quotes; any other scalar as written
	*branch
}

// branch is what a table or list holds.
type branch struct {
	children []*node          // in file order
	byName   map[string]*node // nil while there are few
	within   *node            // of a dotted table: the table whose keys may add to it
}

// leaf is what holds nothing: all scalars, empty tables and empty lists.
var leaf = &branch{}

// few is how many keys are looked through about as fast as looked up.
const few = 24

// child finds the value of a key; nil when the table does not have it.
func (n *node) child(name string) *node {
	if n.byName != nil {
		return n.byName[name]
	}
	for _, c := range n.children {
		if c.name == name && c.index < 0 {
			return c
		}
	}
	return nil
}

// add hangs a value that was made for it under a table or array.
func (n *node) add(c *node) {
	n.children = append(n.children, c)
	if c.index >= 0 {
		return
	}
	switch {
	case n.byName != nil:
		n.byName[c.name] = c
	case len(n.children) > few:
		n.byName = make(map[string]*node, 2*len(n.children))
		for _, each := range n.children {
			n.byName[each.name] = each
		}
	}
}

// latest is the table that a header continues: of a list of tables, the last.
func (n *node) latest() *node {
	if n.origin == repeated {
		return n.children[len(n.children)-1]
	}
	return n
}

// value is that of a scalar: string, int64, float64, bool or Moment; nil of a table
// or list.
func (n *node) value() any {
	switch n.kind {
	case table, array:
		return nil
	case text:
		return n.word
	}
	_, value, _ := scalarOf(n.word)
	return value
}

// heading is what names a value: the header of a table, else the key; an
// element of an array has neither and is its own heading.
func (n *node) heading() span {
	if n.origin == headed || n.index >= 0 || n.parent == nil {
		return n.at
	}
	return n.key
}
