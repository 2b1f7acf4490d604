package packfmt

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/rules"
)

// Catalogue writes the rules of some packs: each rule with the pack that it
// stands in, and once more where another pack alters what it asks.
func Catalogue(w io.Writer, packs []*rules.Effective) error {
	p := &page{}
	p.line("# Catalogue of rules\n\nWritten from the packs in `rules/packs/` by `go test ./rules/packfmt -update`; not edited by hand.\n")
	p.line("Each figure tells how its writer knows it: \\[seen\\] in a public copy, \\[secondary\\] in a document that\nquotes the text, \\[memory\\], common \\[practice\\] without a source, or \\[derived\\] by arithmetic. Locally\nadopted codes decide.\n")
	p.line("| pack | rules | of its own | altered | only cited anew | title |\n|---|---|---|---|---|---|")
	for _, e := range packs {
		c := partsOf(e)
		p.line("| [%s](#%s) | %d | %d | %d | %d | %s |", e.Head.ID, e.Head.ID, len(e.Rules), len(c.own), len(c.altered), len(c.cited), cell(title(e)))
	}
	for _, e := range packs {
		p.section(e, packs)
	}
	_, err := io.WriteString(w, p.b.String())
	return err
}

func title(e *rules.Effective) string {
	return strings.TrimSpace(e.Head.Title + " " + e.Head.Edition)
}

// parts are the rules of a pack by what it does to them.
type parts struct{ own, altered, cited []*rules.Compiled }

// partsOf leaves out what a pack takes over as it is.
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

func (p *page) section(e *rules.Effective, packs []*rules.Effective) {
	c := partsOf(e)
	p.line("\n# %s\n\n%s.\n", e.Head.ID, cell(title(e)))
	p.about(e)
	for _, topic := range rules.Topic("").Values() {
		list := append(ofTopic(c.own, rules.Topic(topic)), ofTopic(c.altered, rules.Topic(topic))...)
		if len(list) == 0 {
			continue
		}
		p.line("\n## %s: %s", e.Head.ID, topic)
		for _, r := range list {
			p.rule(e, r, held(e, r, packs))
		}
	}
	p.cited(e, c.cited)
	p.ownTables(e)
	for _, off := range e.Off {
		if off.Pack == e.Head.ID {
			p.line("\nSwitched off: `%s`. %s", off.Rule, cell(off.Reason))
		}
	}
}

// cited lists inherited rules that ask the same and rest on another text.
func (p *page) cited(e *rules.Effective, list []*rules.Compiled) {
	if len(list) == 0 {
		return
	}
	p.line("\n## %s: cited anew\n\nThese rules ask what they ask in the pack that they come from.\n", e.Head.ID)
	p.line("| rule | from | basis here |\n|---|---|---|")
	for _, r := range list {
		p.line("| `%s` | `%s` | %s |", r.ID, r.Pack, sources(r.Basis))
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

// held tells which packs hold a rule of this one.
func held(e *rules.Effective, r *rules.Compiled, packs []*rules.Effective) string {
	if r.Pack != e.Head.ID {
		return origin(e, r)
	}
	var also []string
	for _, other := range packs {
		if other != e && other.Rule(r.ID) != nil && other.Rule(r.ID).Pack == r.Pack {
			also = append(also, other.Head.ID)
		}
	}
	if len(also) == 0 {
		return fmt.Sprintf("Held by `%s`.", e.Head.ID)
	}
	return fmt.Sprintf("Held by `%s`, and by %s, which extend it.", e.Head.ID, code(also...))
}
