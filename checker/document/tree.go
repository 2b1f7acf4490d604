package document

// Tree is a parsed document: values and where they stand.
type Tree struct {
	source []byte
	lines  lines
	root   *node
}

// Parse reads a TOML document. The name of the file is for the caller's own
// messages. A document that breaks the grammar or a limit gives no tree, and
// one problem for it; one that only gives keys twice gives the tree of the first
// values, and a problem for each of the others.
func Parse(name string, source []byte) (*Tree, []Problem) {
	if problem := admit(source); problem != nil {
		return nil, []Problem{*problem}
	}
	r := &reader{source: source, lines: newLines(source)}
	stopped := r.read()
	if stopped != nil {
		return nil, append(Limit(r.problems), *stopped)
	}
	t := &Tree{source: source, lines: r.lines, root: r.root}
	if len(r.problems) > 0 {
		return t, Limit(r.problems)
	}
	return t, t.agree()
}

// Ref is where the document as a whole stands.
func (t *Tree) Ref() Ref { return Ref{t, t.root} }
