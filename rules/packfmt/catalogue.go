package packfmt

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/rules"
)

// Catalogue writes the rules of some packs as pages, by the names of their files:
// CATALOGUE.md lists packs and rules, and catalogue/ID.md holds those of a pack that
// are its own or that it alters.
func Catalogue(packs []*rules.Effective) map[string][]byte {
	pages := map[string][]byte{"CATALOGUE.md": index(packs)}
	for _, e := range packs {
		pages["catalogue/"+e.Head.ID+".md"] = chapter(e, packs)
	}
	return pages
}

// index lists all packs, and all rules in the order of their ids.
func index(packs []*rules.Effective) []byte {
	p := &page{}
	p.line("# Catalogue of rules\n\nWritten from the packs in `rules/packs/` by `go test ./rules/packfmt -update`; not edited by hand.\n")
	p.line("Each figure tells how its writer knows it: \\[seen\\] in a public copy, \\[secondary\\] in a document that\nquotes the text, \\[memory\\], common \\[practice\\] without a source, or \\[derived\\] by arithmetic. Locally\nadopted codes decide.\n")
	p.line("| pack | title | extends | rules | own | altered |\n|---|---|---|---|---|---|")
	type entry struct {
		rule *rules.Compiled
		pack string
	}
	var all []entry
	for _, e := range packs {
		c := partsOf(e)
		p.line("| [%s](catalogue/%s.md) | %s | %s | %d | %d | %d |", e.Head.ID, e.Head.ID, cell(title(e)), strings.Join(e.Head.Extends, ", "), len(e.Rules), len(c.own), len(c.altered))
		for _, r := range c.own {
			all = append(all, entry{r, e.Head.ID})
		}
	}
	slices.SortFunc(all, func(a, b entry) int { return strings.Compare(a.rule.ID, b.rule.ID) })
	p.line("\n| rule | what it is about | topic | pack |\n|---|---|---|---|")
	for _, r := range all {
		p.line("| [`%s`](catalogue/%s.md#%s) | %s | %s | `%s` |", r.rule.ID, r.pack, r.rule.ID, cell(r.rule.Title), r.rule.Topic, r.pack)
	}
	return p.text()
}

// parts are the rules of a pack by what it does to them.
type parts struct {
	own, altered, cited []*rules.Compiled
	same                int // taken over as they are
}

func partsOf(e *rules.Effective) parts {
	var p parts
	for _, r := range e.Rules {
		own := ownParts(e, r)
		switch {
		case r.Pack == e.Head.ID:
			p.own = append(p.own, r)
		case len(r.Reached) > 0 || slices.ContainsFunc(own, func(part string) bool { return part != "basis" }):
			p.altered = append(p.altered, r)
		case len(own) > 0:
			p.cited = append(p.cited, r)
		default:
			p.same++
		}
	}
	return p
}

// ownParts are the parts of an inherited rule that a pack gives.
func ownParts(e *rules.Effective, r *rules.Compiled) []string {
	var list []string
	for part, pack := range r.Given {
		if pack == e.Head.ID {
			list = append(list, part)
		}
	}
	return list
}

// chapter is the page of one pack.
func chapter(e *rules.Effective, packs []*rules.Effective) []byte {
	p, c := &page{only: e.Head.ID}, partsOf(e)
	p.line("# %s: %s\n\nA page of the [catalogue of rules](../CATALOGUE.md).\n", e.Head.ID, cell(title(e)))
	p.about(e)
	if len(e.Head.Extends) > 0 {
		p.line("Of its %d rules, %d are its own and %d are altered here; %d are taken over as they are and %d cited anew.", len(e.Rules), len(c.own), len(c.altered), c.same, len(c.cited))
	}
	p.rules(e, append(slices.Clone(c.own), c.altered...), func(r *rules.Compiled) string { return held(e, r, packs) })
	p.cited(c.cited)
	p.ownTables(e)
	p.off(slices.DeleteFunc(slices.Clone(e.Off), func(off rules.SwitchedOff) bool { return off.Pack != e.Head.ID }))
	return p.text()
}

// cited lists inherited rules that ask the same and rest on another text.
func (p *page) cited(list []*rules.Compiled) {
	if len(list) == 0 {
		return
	}
	p.line("\n## Cited anew\n\nThese rules ask what they ask in the pack that they come from.\n")
	p.line("| rule | from | basis here |\n|---|---|---|")
	for _, r := range list {
		p.line("| [`%s`](%s.md#%s) | `%s` | %s |", r.ID, r.Pack, r.ID, r.Pack, sources(r.Basis))
	}
}

func (p *page) ownTables(e *rules.Effective) {
	var tables []string
	for _, name := range slices.Sorted(maps.Keys(e.Tables)) {
		if e.Tables[name].Pack == e.Head.ID {
			tables = append(tables, name)
		}
	}
	p.tables(e, tables)
}

// held tells which other packs hold a rule of this one, or where one comes from.
func held(e *rules.Effective, r *rules.Compiled, packs []*rules.Effective) string {
	if r.Pack != e.Head.ID {
		return origin(e, r)
	}
	var also []string
	for _, other := range packs {
		if twin := other.Rule(r.ID); other != e && twin != nil && twin.Pack == r.Pack {
			also = append(also, other.Head.ID)
		}
	}
	if len(also) == 0 {
		return ""
	}
	return fmt.Sprintf("Also in %s.", code(also...))
}
