package document

// kind is what a value is.
type kind int

const (
	table kind = iota
	array
	text
	whole   // integer
	decimal // float
	truth   // boolean
	moment  // date, time or both
)

// span is a half-open range of bytes in the source.
type span struct{ start, end int }

// node is one value of a document with the place where it stands.
type node struct {
	kind   kind
	origin origin
	parent *node
	name   string // key in a table
	index  int    // place in an array, from 0; -1 in a table
	key    span   // last part of the key or header that names it; the array's for an element
	at     span   // the value; of a table with a header, the header with its brackets
	value  any    // string, int64, float64 or bool; the raw text of a date or time

	children []*node // in file order
	byName   map[string]*node
}

// origin is how a table or array came to be, which decides what may be added.
type origin int

const (
	closed   origin = iota // written as one value: nothing may be added
	implied                // named by a longer header: [a.b] implies a
	headed                 // has its own header: [a]
	dotted                 // named by a dotted key: a.b = 1
	repeated               // array of tables: [[a]]
)

// child finds the value of a key; nil when the table does not have it.
func (n *node) child(name string) *node { return n.byName[name] }

// add hangs a value under a key of a table.
func (n *node) add(name string, c *node) *node {
	if n.byName == nil {
		n.byName = map[string]*node{}
	}
	c.parent, c.name, c.index = n, name, -1
	n.byName[name] = c
	n.children = append(n.children, c)
	return c
}

// push hangs a value at the end of an array.
func (n *node) push(c *node) *node {
	c.parent, c.index = n, len(n.children)
	n.children = append(n.children, c)
	return c
}
