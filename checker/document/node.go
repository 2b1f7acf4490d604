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

// node is one value of a document: where it stands, and the numbers of the nodes
// around it. What it says is looked up in the source. Documents have thousands: so
// they are small, and hold no pointers.
type node struct {
	kind    kind
	origin  origin
	depth   uint8
	element bool   // of an array, without a key
	mark    uint8  // of its key
	index   uint16 // place in its table or array, from 0
	number  uint16
	parent  uint16
	next    uint16 // in its table or array; the first one after the last
	last    uint16 // that a table or array holds; 0 when it holds nothing
	key     span   // the last part of the key or header that names it
	at      span   // the value; of a table with a header, the header with its brackets
}

// heading is what names a value: the header of a table, else the key; an
// element of an array has neither and is its own heading.
func (n *node) heading() span {
	if n.origin == headed || n.element {
		return n.at
	}
	return n.key
}
