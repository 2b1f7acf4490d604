package design

import "github.com/ventlint/ventlint/checker/document"

// Load reads a design file. It reports all mistakes, in file order: of grammar,
// of keys and values, and of what they say together. With any mistake the
// design is nil. The name of the file is for the caller's own messages.
func Load(name string, source []byte) (*Design, []document.Problem) {
	return load(document.Parse(name, source))
}

// LoadKnown is Load for a text that the program has written itself from values: it
// is known to be TOML.
func LoadKnown(source string) (*Design, []document.Problem) {
	return load(document.ParseKnown(source, ""))
}

func load(tree *document.Tree, problems []document.Problem) (*Design, []document.Problem) {
	if tree == nil {
		return nil, problems
	}
	d := &Design{}
	problems = append(problems, tree.Decode(d)...)
	problems = append(problems, check(d)...)
	if len(problems) > 0 {
		return nil, document.Limit(problems)
	}
	return d, nil
}
