package config

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

const designSuffix = ".vent.toml"

// Select lists the designs that the configuration names, in the order of their
// paths. A pattern that meets none is a problem, and so is leaving out all. Links
// inside folders are not followed, and folders that begin with a dot not entered
// unless a pattern names them.
func (c *Config) Select() ([]string, []document.Problem) {
	k := checker{Config: c}
	var all []string
	for _, p := range c.Designs {
		met, err := c.glob(p).walk()
		if err != nil {
			k.add(p.Position(), p.Path(), "", "%v", err)
		} else if len(met) == 0 {
			k.add(p.Position(), p.Path(), "", "no design at %q, expected files named *%s", p.Text, designSuffix)
		}
		all = append(all, met...)
	}
	slices.Sort(all)
	kept := c.without(slices.Compact(all))
	if len(all) > 0 && len(kept) == 0 {
		k.add(c.At("except"), "except", "", "found patterns that leave out every design, expected some to remain")
	}
	return kept, k.problems
}

// without leaves out what except names.
func (c *Config) without(names []string) []string {
	var globs []glob
	for _, p := range c.Except {
		globs = append(globs, c.glob(p))
	}
	return slices.DeleteFunc(names, func(name string) bool {
		return slices.ContainsFunc(globs, func(g glob) bool { return g.meets(name) })
	})
}

// walk lists the designs that a pattern meets. Its folder may be named by a link.
func (g glob) walk() ([]string, error) {
	var met []string
	root := filepath.FromSlash(g.root)
	if info, err := os.Stat(root); err == nil && info.IsDir() {
		root += string(filepath.Separator)
	}
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		switch name = path.Clean(filepath.ToSlash(name)); {
		case err != nil && name == g.root && errors.Is(err, fs.ErrNotExist):
			return fs.SkipAll
		case err != nil:
			return err
		case entry.IsDir() && name != g.root && strings.HasPrefix(entry.Name(), "."):
			return fs.SkipDir
		case entry.Type().IsRegular() && strings.HasSuffix(name, designSuffix) && g.meets(name):
			met = append(met, name)
		}
		return nil
	})
	return met, err
}
