package document

// Tree is a parsed document: values and where they stand.
type Tree struct {
	source string
	lines  *lines
	root   *node
	beyond bool // the document is not plain, see agree
}

// Parse reads a TOML document. The name of the file is for the caller's own
// messages. A document that breaks the grammar or a limit gives no tree, and
// one problem for it; one that only gives keys twice gives the tree of the first
// values, and a problem for each of the others.
func Parse(name string, source []byte) (*Tree, []Problem) {
	if problem := admit(source); problem != nil {
		return nil, []Problem{*problem}
	}
	t, problems := parse(string(source), "")
	if t == nil || len(problems) > 0 || !t.beyond {
		return t, problems
	}
	return t, t.agree()
}

// ParseKnown reads a document that was read with Parse before and found sound,
// such as one that ships with the program: no second reader looks at it. Tables
// under the header unwanted, such as "[[sample]]", are left out; they hold no text
// in three double quotes.
func ParseKnown(source, unwanted string) (*Tree, []Problem) { return parse(source, unwanted) }

func parse(source, unwanted string) (*Tree, []Problem) {
	r := &reader{source: source, lines: newLines(source), unwanted: unwanted}
	stopped := r.read()
	if stopped != nil {
		return nil, append(Limit(r.problems), *stopped)
	}
	return &Tree{source: source, lines: r.lines, root: r.root, beyond: r.beyond}, Limit(r.problems)
}

// Ref is where the document as a whole stands.
func (t *Tree) Ref() Ref { return Ref{t, t.root} }
