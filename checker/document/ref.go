package document

import (
	"fmt"
	"strings"
)

// Ref is where a table stands in its file. The decoder sets it in every struct
// that embeds it. The zero Ref stands nowhere: its positions are zero.
type Ref struct {
	tree *Tree
	node *node
}

// Self gives the Ref that a struct embeds.
func (r Ref) Self() Ref { return r }

// Position is the place to show for the table: the value of its id, or else its
// header or key.
func (r Ref) Position() Position {
	if r.node == nil {
		return Position{}
	}
	if id := r.tree.child(r.node, "id"); id != nil && id.kind == text {
		return r.tree.lines.position(id.at)
	}
	return r.tree.lines.position(r.node.heading())
}

// At is the place of the value of a key; of the table when it lacks the key.
func (r Ref) At(key string) Position {
	if c := r.child(key); c != nil {
		return r.tree.lines.position(c.at)
	}
	return r.Position()
}

// KeyAt is the place of a key itself; of the table when it lacks the key.
func (r Ref) KeyAt(key string) Position {
	if c := r.child(key); c != nil {
		return r.tree.lines.position(c.key)
	}
	return r.Position()
}

// Offset is where the value of a key begins in the file, in bytes: an order of
// places. It is that of the table when the table lacks the key.
func (r Ref) Offset(key string) int {
	if c := r.child(key); c != nil {
		return int(c.at.start)
	}
	if r.node == nil {
		return 0
	}
	return int(r.node.heading().start)
}

// Given tells whether the table has a key.
func (r Ref) Given(key string) bool { return r.child(key) != nil }

// Keys lists the keys of the table in file order.
func (r Ref) Keys() []string {
	if r.node == nil {
		return nil
	}
	keys := make([]string, 0, r.tree.size(r.node))
	for c := range r.tree.children(r.node) {
		keys = append(keys, r.tree.name(c))
	}
	return keys
}

// Path is the place of the table for people, counting from 1: "opening[2]". It
// is empty for the document as a whole.
func (r Ref) Path() string {
	if r.node == nil {
		return ""
	}
	return r.tree.path(r.node)
}

// KeyPath is the place of a key of the table for people: "opening[2].flow".
func (r Ref) KeyPath(key string) string { return join(r.Path(), key) }

// Pointer is the JSON pointer (RFC 6901) of the table, counting from 0:
// "/opening/1". It is empty for the document as a whole.
func (r Ref) Pointer() string {
	var b strings.Builder
	for _, n := range r.tree.steps(r.node) {
		if n.element {
			fmt.Fprintf(&b, "/%d", n.index)
			continue
		}
		b.WriteString("/" + pointerEscapes.Replace(r.tree.name(n)))
	}
	return b.String()
}

// pointerEscapes are those of RFC 6901.
var pointerEscapes = strings.NewReplacer("~", "~0", "/", "~1")

func (r Ref) child(key string) *node {
	if r.node == nil {
		return nil
	}
	return r.tree.child(r.node, key)
}

// steps lists the nodes from below the root down to n.
func (t *Tree) steps(n *node) []*node {
	if n == nil || n.depth == 0 {
		return nil
	}
	return append(t.steps(t.node(n.parent)), n)
}

func (t *Tree) path(n *node) string {
	path := ""
	for _, step := range t.steps(n) {
		if step.element {
			path += fmt.Sprintf("[%d]", step.index+1)
			continue
		}
		path = join(path, t.name(step))
	}
	return path
}

// join adds a key to a path, in quotes where TOML needs them.
func join(path, key string) string {
	if !allBare(key) {
		key = fmt.Sprintf("%q", key)
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

// allBare tells whether a key can stand without quotes.
func allBare(key string) bool {
	for i := range len(key) {
		if !isBare(key[i]) {
			return false
		}
	}
	return key != ""
}
