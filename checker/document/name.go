package document

import "fmt"

// Name is the path of the table with ids in place of numbers, as people call
// it: "opening.fresh". It is empty for the document as a whole.
func (r Ref) Name() string {
	name := ""
	for _, step := range r.node.line() {
		id := step.child("id")
		switch {
		case step.index < 0:
			name = join(name, step.name)
		case id != nil && id.kind == text:
			name = join(name, id.word)
		default:
			name += fmt.Sprintf("[%d]", step.index+1)
		}
	}
	return name
}

// KeyName is the name of a key of the table: "opening.fresh.flow".
func (r Ref) KeyName(key string) string { return join(r.Name(), key) }

// Child is the place of the table that a key holds; the zero Ref when there is
// none.
func (r Ref) Child(key string) Ref {
	c := r.child(key)
	if c == nil || c.kind != table {
		return Ref{}
	}
	return Ref{r.tree, c}
}

// Leaf tells whether the table gives a key that holds no table: the most
// specific place that a finding can point at.
func (r Ref) Leaf(key string) bool {
	c := r.child(key)
	return c != nil && c.kind != table && !(c.kind == array && len(c.children) > 0 && c.children[0].kind == table)
}
