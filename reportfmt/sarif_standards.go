package reportfmt

import (
	"cmp"
	"maps"
	"slices"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// citation is one place in a standard that a rule cites.
type citation struct {
	document, edition, section string
	known                      string // how, where it was not read there
}

// citationOf is false for common practice: nobody published it.
func citationOf(b rules.Basis) (citation, bool) {
	return citation{oneLine(b.Document), oneLine(b.Edition), cmp.Or(oneLine(b.Section), "whole document"), provenance(b.Read)}, b.Read != "practice"
}

func (c citation) component() sarifComponent {
	return sarifComponent{Name: c.document, GUID: guidOf(c.document + "\x00" + c.edition)}
}

func (c citation) relationship() sarifRelationship {
	r := sarifRelationship{
		Target: sarifTarget{ID: c.section, Component: c.component()},
		Kinds:  []string{"superset"}, // a section asks more than one rule does
	}
	if c.known != "" {
		r.Description = &sarifText{Text: c.known}
	}
	return r
}

func compareCitations(a, b citation) int {
	return cmp.Or(cmp.Compare(a.document, b.document), cmp.Compare(a.edition, b.edition),
		cmp.Compare(a.section, b.section), cmp.Compare(a.known, b.known))
}

// citations are what rules cite, by the rule's id: their own basis and that of the
// limits they compare with. Of one place that is known in several ways, the first
// file in order tells.
type citations map[string][]citedIn

type citedIn struct {
	citation
	file string
}

func (all citations) add(found []placed) {
	for _, p := range found {
		id := ruleID(p.Result)
		for _, b := range bases(p.Result) {
			if c, ok := citationOf(b); ok {
				all[id] = note(all[id], citedIn{c, p.File})
			}
		}
	}
}

func note(list []citedIn, c citedIn) []citedIn {
	for i, known := range list {
		if known.samePlace(c.citation) {
			if c.file < known.file {
				list[i] = c
			}
			return list
		}
	}
	return append(list, c)
}

// sorted gives the citations of each rule in their order.
func (all citations) sorted() map[string][]citation {
	sorted := map[string][]citation{}
	for id, list := range all {
		sorted[id] = each(list, func(c citedIn) citation { return c.citation })
		slices.SortFunc(sorted[id], compareCitations)
	}
	return sorted
}

func (c citation) samePlace(other citation) bool {
	c.known, other.known = "", ""
	return c == other
}

func bases(r *checker.Result) []rules.Basis {
	all := slices.Clone(r.Rule.Basis)
	for _, l := range r.Limits {
		all = append(all, l.Basis...)
	}
	return all
}

// sarifStandards makes a taxonomy of each edition that any rule cites.
func sarifStandards(cited map[string][]citation) []sarifStandard {
	var every []citation
	for c := range maps.Values(cited) {
		every = append(every, c...)
	}
	slices.SortFunc(every, compareCitations)
	every = slices.CompactFunc(every, citation.samePlace)
	var all []sarifStandard
	for i, c := range every {
		if i == 0 || every[i-1].component() != c.component() {
			all = append(all, sarifStandard{
				Name: c.document, FullName: joined(" ", c.document, c.edition), Version: c.edition, GUID: c.component().GUID,
			})
		}
		last := &all[len(all)-1]
		last.Taxa = append(last.Taxa, sarifTaxon{c.section, sarifText{Text: sarifPlain(joined(", ", last.FullName, c.section) + ".")}})
	}
	return all
}

// cite gives the run its standards and each of its rules what it cites.
func (run *sarifRun) cite(all citations) {
	cited := all.sorted()
	run.Taxonomies = sarifStandards(cited)
	for _, s := range run.Taxonomies {
		run.Tool.Driver.Taxonomies = append(run.Tool.Driver.Taxonomies, sarifComponent{s.Name, s.GUID})
	}
	for i := range run.Tool.Driver.Rules {
		rule := &run.Tool.Driver.Rules[i]
		for _, c := range cited[rule.ID] {
			rule.Relationships = append(rule.Relationships, c.relationship())
		}
	}
}
