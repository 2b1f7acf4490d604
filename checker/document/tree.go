package document

import "strings"

// Tree is a parsed document: values and where they stand.
type Tree struct {
	nodes
	source  string
	lines   *lines
	written map[int32]string // texts and keys that are not what stands between their quotes, by their offset
	beyond  bool             // the document is not plain, see agree
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
	r := &reader{Tree: &Tree{source: source, lines: newLines(source)}, unwanted: unwanted}
	stopped := r.read()
	if stopped != nil {
		return nil, append(Limit(r.problems), *stopped)
	}
	return r.Tree, Limit(r.problems)
}

// Ref is where the document as a whole stands.
func (t *Tree) Ref() Ref { return Ref{t, t.root()} }

func (t *Tree) root() *node { return t.node(0) }

// name is the key of a value in a table.
func (t *Tree) name(n *node) string { return t.said(n.key) }

// word is a text, without its quotes; any other scalar as written.
func (t *Tree) word(n *node) string { return t.said(n.at) }

// said is what a key or scalar at a place says.
func (t *Tree) said(at span) string {
	as := t.source[at.start:at.end]
	if as == "" || !isQuote(as[0]) {
		return as
	}
	if t.written != nil {
		if written, ok := t.written[at.start]; ok {
			return written
		}
	}
	if len(as) < 6 || as[1] != as[0] || as[2] != as[0] {
		return as[1 : len(as)-1]
	}
	lines := strings.TrimPrefix(as[3:len(as)-3], "\r")
	return strings.TrimPrefix(lines, "\n") // the first one does not count
}

// value is that of a scalar: string, int64, float64, bool or Moment; nil of a table
// or list.
func (t *Tree) value(n *node) any {
	switch n.kind {
	case table, array:
		return nil
	case text:
		return t.word(n)
	}
	_, value, _ := scalarOf(t.word(n))
	return value
}

// few is how many keys are looked through about as fast as looked up.
const few = 64

// child finds the value of a key; nil when the table does not have it.
func (t *Tree) child(of *node, key string) *node {
	if of.kind != table {
		return nil
	}
	if t.size(of) > few {
		return t.named[keyed{of.number, key}]
	}
	mark := markOf(key)
	for c := range t.children(of) {
		if c.mark == mark && t.name(c) == key {
			return c
		}
	}
	return nil
}
