package rules

import (
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

const (
	longestName = 64
	kebabWords  = "expected small letters, digits and single hyphens such as \"harbor-county\", at most 64"
)

// checkNames refuses names that others could not use, and those that stand for
// two things.
func (e *Effective) checkNames(pack *Pack, report *mistakes) {
	kebabOnly := func(ref document.Ref, key, name string) {
		if !kebab(name) || len(name) > longestName {
			report.add(ref.At(key), ref.KeyPath(key), fmt.Sprintf("found the name %.70q, %s", name, kebabWords), "")
		}
	}
	kebabOnly(pack.Head.Ref, "id", pack.Head.ID)
	if e.Extends(pack.Head.ID) {
		report.add(pack.Head.At("id"), pack.Head.KeyPath("id"), fmt.Sprintf("%q is the id of a pack that it extends, expected one of its own", pack.Head.ID), "")
	}
	for _, r := range pack.Rules {
		kebabOnly(r.Ref, "id", r.ID)
		for _, alias := range r.Aliases {
			kebabOnly(r.Ref, "aliases", alias)
		}
	}
	identifiersOnly(pack.Limits, "limit", func(l *Limit) document.Ref { return l.Ref }, report)
	identifiersOnly(pack.Tables, "table", func(t *Table) document.Ref { return t.Ref }, report)
	e.checkAliases(pack, report)
}

func identifiersOnly[T any](parts map[string]T, what string, ref func(T) document.Ref, report *mistakes) {
	for _, name := range sortedKeys(parts) {
		if !goodName(name) {
			r := ref(parts[name])
			report.add(r.Position(), r.Path(), fmt.Sprintf("found the name %.70q of a %s, expected letters, digits and _, at most 64", name, what), "")
		}
	}
}

// goodName tells whether expressions can name a limit or table.
func goodName(name string) bool {
	return name == wordAt(name) && name != "" && !isDigit(name[0]) && len(name) <= longestName
}

// kebab tells whether a name is small letters and digits, with single hyphens
// inside.
func kebab(name string) bool {
	for part := range strings.SplitSeq(name, "-") {
		if part == "" || strings.Trim(part, "abcdefghijklmnopqrstuvwxyz0123456789") != "" {
			return false
		}
	}
	return true
}

// checkAliases refuses an earlier id that is another rule's id now or was before.
func (e *Effective) checkAliases(pack *Pack, report *mistakes) {
	holder := map[string]*Compiled{}
	for _, r := range e.Rules {
		holder[r.ID] = r
	}
	for _, r := range e.Rules {
		for _, alias := range r.Aliases {
			other := holder[alias]
			holder[alias] = r
			if other == nil || r.Pack != pack.Head.ID && other.Pack != pack.Head.ID {
				continue // parents were looked at when they were loaded
			}
			e.reportAlias(r, other, alias, report)
		}
	}
}

func (e *Effective) reportAlias(r, other *Compiled, alias string, report *mistakes) {
	switch {
	case other == r:
		report.add(r.At("aliases"), r.KeyPath("aliases"), fmt.Sprintf("rule %q has the earlier id %q twice, or as its id", r.ID, alias), "")
	case r.Pack == e.Head.ID:
		report.add(r.At("aliases"), r.KeyPath("aliases"), fmt.Sprintf("the earlier id %q of rule %q is that of rule %q of pack %q", alias, r.ID, other.ID, other.Pack), "")
	default:
		report.add(other.At("id"), other.KeyPath("id"), fmt.Sprintf("the name %q is an earlier id of rule %q of pack %q", alias, r.ID, r.Pack), "")
	}
}
