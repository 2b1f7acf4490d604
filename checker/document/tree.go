package document

// Tree is a parsed document: values and where they stand.
type Tree struct {
	name   string
	source []byte
	lines  lines
	root   *node
}

// Parse reads a TOML document. name is used in messages of the caller alone. A
// document that breaks the grammar gives no tree and one problem; one that only
// gives keys twice gives the tree of the first values and all such problems.
func Parse(name string, source []byte) (*Tree, []Problem) {
	return nil, []Problem{{Position: Position{1, 1, 1}, Message: "reading is not built yet"}}
}

// Decode fills the struct that into points to. It reports all mistakes, in file
// order.
func (t *Tree) Decode(into any) []Problem { return nil }
