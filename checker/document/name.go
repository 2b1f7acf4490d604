package document

import "fmt"

// Name is the path of the table with ids in place of numbers, as people call
// it: "opening.fresh". It is empty for the document as a whole.
func (r Ref) Name() string {
	name := ""
	for _, step := range r.tree.steps(r.node) {
		id := r.tree.child(step, "id")
		switch {
		case !step.element:
			name = join(name, r.tree.name(step))
		case id != nil && id.kind == text:
			name = join(name, r.tree.word(id))
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
	return c != nil && c.kind != table && !(c.kind == array && c.last != 0 && r.tree.first(c).kind == table)
}
