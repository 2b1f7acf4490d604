package design

import "github.com/ventlint/ventlint/checker/document"

// Load reads a design file. It reports all mistakes, in file order; with
// mistakes the design is nil.
func Load(name string, source []byte) (*Design, []document.Problem) {
	tree, problems := document.Parse(name, source)
	if tree == nil {
		return nil, problems
	}
	d := &Design{}
	if problems = append(problems, tree.Decode(d)...); len(problems) > 0 {
		return nil, problems
	}
	return d, nil
}
