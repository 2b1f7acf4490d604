package config

import (
	"path"
	"strings"
)

// glob is a pattern ready to be met: a folder to walk, and what may lie below.
type glob struct {
	root  string // as the working folder sees it
	parts []string
}

// glob reads a pattern. All before the first wildcard is the folder, or design,
// to begin at.
func (c *Config) glob(p Pattern) glob {
	parts := strings.Split(p.Text, "/")
	n := 0
	for n < len(parts) && !isWild(parts[n]) {
		n++
	}
	root := strings.Join(parts[:n], "/")
	if root == "" && n > 0 && strings.HasPrefix(p.Text, "/") {
		root = "/"
	}
	g := glob{root: c.Path(root)}
	for _, part := range parts[n:] {
		if part != "" && part != "." {
			g.parts = append(g.parts, part)
		}
	}
	return g
}

func isWild(part string) bool { return strings.ContainsAny(part, "*?[") }

// meets tells whether the pattern is that of a design, or of a folder that it
// lies in.
func (g glob) meets(name string) bool {
	below, ok := below(g.root, name)
	return ok && meets(g.parts, below)
}

// below gives the folders and the name under a root.
func below(root, name string) ([]string, bool) {
	switch {
	case name == root:
		return nil, true
	case root == ".":
		return strings.Split(name, "/"), !strings.HasPrefix(name, "../") && !path.IsAbs(name)
	}
	rest, ok := strings.CutPrefix(name, strings.TrimSuffix(root, "/")+"/")
	return strings.Split(rest, "/"), ok
}

// meets walks along the name and keeps, for each place in the pattern, whether it
// can be reached: so no pattern takes long.
func meets(parts, name []string) bool {
	reached := make([]bool, len(parts)+1)
	reached[0] = true
	for _, folder := range name {
		spread(parts, reached)
		if reached[len(parts)] {
			return true
		}
		next := make([]bool, len(parts)+1)
		for i, part := range parts {
			switch met, _ := path.Match(part, folder); {
			case !reached[i]:
			case part == "**":
				next[i] = true
			case met:
				next[i+1] = true
			}
		}
		reached = next
	}
	spread(parts, reached)
	return reached[len(parts)]
}

// spread lets ** stand for no folder.
func spread(parts []string, reached []bool) {
	for i, part := range parts {
		if reached[i] && part == "**" {
			reached[i+1] = true
		}
	}
}
