package config

import (
	"path"
	"path/filepath"

	"github.com/ventlint/ventlint/checker/document"
)

// Load reads a configuration. It reports all mistakes, in file order; with any,
// the configuration is nil. name is the path of the file from the working folder.
func Load(name string, source []byte) (*Config, []document.Problem) {
	tree, problems := document.Parse(name, source)
	if tree == nil {
		return nil, problems
	}
	name = filepath.ToSlash(name)
	c := &Config{Name: name, folder: path.Dir(name)}
	k := checker{c, append(problems, tree.Decode(c)...)}
	k.check()
	if len(k.problems) > 0 {
		return nil, document.Limit(k.problems)
	}
	return c, nil
}
