package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/reportfmt"
)

// destinations are the reports of one run.
type destinations struct {
	shown reportfmt.Format // on standard output
	files []destination
}

// destination is a report that goes to a file.
type destination struct {
	form reportfmt.Format
	path string
}

// destinations reads --format and --output.
func (f *reviewFlags) destinations() (destinations, error) {
	form, err := reportfmt.Named(f.format)
	if err != nil {
		return destinations{}, fmt.Errorf("--format: %w", err)
	}
	d := destinations{shown: form}
	taken := map[string]bool{}
	for _, text := range f.outputs {
		name, path, ok := strings.Cut(text, "=")
		if !ok || path == "" {
			return d, fmt.Errorf("--output %q, expected a form and a file such as sarif=out.sarif", text)
		}
		form, err := reportfmt.Named(name)
		if err != nil {
			return d, fmt.Errorf("--output %q: %w", text, err)
		}
		if taken[filepath.Clean(path)] {
			return d, fmt.Errorf("--output names the file %q twice", path)
		}
		taken[filepath.Clean(path)] = true
		d.files = append(d.files, destination{form, path})
	}
	return d, nil
}

// depth is what the deepest report asks of a review.
func (d destinations) depth() checker.Depth {
	depth := reportfmt.Depth(d.shown)
	for _, file := range d.files {
		depth = min(depth, reportfmt.Depth(file.form))
	}
	return depth
}

// spare refuses to write a report over what is read: a design, the file of a pack,
// or the configuration, whose name is empty without one.
func (d destinations) spare(inputs []input, packs []string, settings string) error {
	for _, file := range d.files {
		if settings != "" && sameFile(settings, file.path) {
			return fmt.Errorf("--output %q is the configuration of this review", file.path)
		}
		for _, in := range inputs {
			if !in.stdin && sameFile(in.path, file.path) {
				return fmt.Errorf("--output %q is a design of this review", file.path)
			}
		}
		for _, pack := range packs {
			if bare, _, _ := strings.Cut(pack, "@sha256:"); sameFile(bare, file.path) {
				return fmt.Errorf("--output %q is a pack of this review", file.path)
			}
		}
	}
	return nil
}

// sameFile tells whether two paths name one file.
func sameFile(a, b string) bool {
	one, err := os.Stat(a)
	if err != nil {
		return false
	}
	other, err := os.Stat(b)
	return err == nil && os.SameFile(one, other)
}
