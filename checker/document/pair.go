package document

import "reflect"

// Pair is a key of a table and the text that it holds. A slice of pairs takes a
// table of texts, in the order of the file.
type Pair struct{ Key, Text string }

// pairs decodes a table of texts. What is no text is left out.
func (d *decoder) pairs(n *node, v reflect.Value) bool {
	if n.kind != table {
		return d.wrong(n, reflect.TypeFor[map[string]string]())
	}
	pairs := make([]Pair, 0, d.tree.size(n))
	for c := range d.tree.children(n) {
		if c.kind != text {
			d.wrong(c, reflect.TypeFor[string]())
			continue
		}
		pairs = append(pairs, Pair{d.tree.name(c), d.tree.word(c)})
	}
	v.Set(reflect.ValueOf(pairs))
	return true
}
