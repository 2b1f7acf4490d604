package config

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/reportfmt"
	"github.com/ventlint/ventlint/rules"
)

// checker gathers the mistakes that the decoder cannot see.
type checker struct {
	*Config
	problems []document.Problem
}

func (k *checker) check() {
	k.empty("designs", len(k.Designs))
	k.empty("except", len(k.Except))
	k.empty("pack", len(k.Packs))
	k.empty("output", len(k.Outputs))
	for _, p := range append(slices.Clone(k.Designs), k.Except...) {
		k.pattern(p)
	}
	for _, p := range k.Packs {
		k.pack(p)
	}
	k.outputs()
	if k.Baseline != nil && strings.TrimSpace(*k.Baseline) == "" {
		k.add(k.At("baseline"), "baseline", "", "found an empty text, expected the report of an earlier review")
	}
	if k.Given("except") && !k.Given("designs") {
		k.add(k.KeyAt("except"), "except", "", "found except without designs, from which it takes")
	}
}

func (k *checker) add(at document.Position, path, hint, format string, args ...any) {
	k.problems = append(k.problems, document.Problem{Position: at, Path: path, Message: fmt.Sprintf(format, args...), Hint: hint})
}

// empty refuses a list that says nothing. One whose entries all have mistakes is
// empty too, but has been told of.
func (k *checker) empty(key string, entries int) {
	told := slices.ContainsFunc(k.problems, func(p document.Problem) bool { return strings.HasPrefix(p.Path, key) })
	if entries == 0 && k.Given(key) && !told {
		k.add(k.At(key), key, "leave the key out", "found an empty list, expected one entry or more")
	}
}

func (k *checker) pack(p Pack) {
	bare, _, _ := strings.Cut(p.Text, pinMark)
	if isFile(bare) || slices.Contains(rules.BuiltIn(), bare) {
		return
	}
	k.add(p.Position(), p.Path(), meant(document.Near(bare, rules.BuiltIn())),
		"no pack %q, expected one that ships with the program, or a file *%s", bare, packSuffix)
}

// outputs refuses what is no form and file, and two reports for one file.
func (k *checker) outputs() {
	taken := map[string]bool{}
	for _, o := range k.Outputs {
		form, file, ok := strings.Cut(o.Text, "=")
		if !ok || file == "" {
			k.add(o.Position(), o.Path(), "", "found %q, expected a form and a file such as \"sarif=out.sarif\"", o.Text)
			continue
		}
		if _, err := reportfmt.Named(form); err != nil {
			k.add(o.Position(), o.Path(), meant(document.Near(form, reportfmt.Names())), "%v", err)
		}
		if file = path.Clean(file); taken[file] {
			k.add(o.Position(), o.Path(), "", "found the file %q twice, expected a file for each report", file)
		}
		taken[file] = true
	}
}

func (k *checker) pattern(p Pattern) {
	refuse := func(format string, args ...any) { k.add(p.Position(), p.Path(), "", format, args...) }
	if strings.TrimSpace(p.Text) == "" {
		refuse("found an empty text, expected a design, a folder, or a pattern such as \"designs/**\"")
	}
	if strings.Contains(p.Text, `\`) {
		refuse(`found a backslash in %q, expected / between folders`, p.Text)
		return
	}
	wild := false
	for _, part := range strings.Split(p.Text, "/") {
		switch _, err := path.Match(part, ""); {
		case err != nil:
			refuse("found %q, which has a [ without its ]", p.Text)
		case strings.Contains(part, "**") && part != "**":
			refuse("found ** beside other characters in %q, expected it between slashes alone", p.Text)
		case wild && part == "..":
			refuse("found .. after a wildcard in %q, expected it before", p.Text)
		}
		wild = wild || isWild(part)
	}
}

func meant(near string) string {
	if near == "" {
		return ""
	}
	return fmt.Sprintf("did you mean %q?", near)
}
