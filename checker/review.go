package checker

import (
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/expression"
	"github.com/ventlint/ventlint/rules/facts"
)

// Request is what a review needs beside the design.
type Request struct {
	File            string // how reports call the design
	Packs           []*rules.Effective
	Date            string // day of the review, YYYY-MM-DD
	IgnoreVariances bool   // judge as if the design recorded none
	Brief           bool   // results tell no inputs, and those that ask nothing no comparisons: for reports that show none
}

// Review asks every rule of the packs of a design. It always gives a report: a
// pack that cannot be used is refused when it is loaded, a design when it is read.
func Review(d *design.Design, q Request) *Report {
	r := &Report{File: q.File, Design: d, Units: systemOf(d), Date: q.Date}
	w := &reviewing{report: r, telling: q.telling(), facts: facts.Of(d), things: map[any]Subject{}, keys: map[expression.Read]*keyRead{}}
	for _, pack := range outermost(q.Packs) {
		r.Packs = append(r.Packs, PackUsed{pack.Head.ID, pack.Head.Title, pack.Head.Edition, pack.Digest()})
		for _, rule := range pack.Rules {
			w.ask(pack, rule)
		}
	}
	r.Results = w.ordered()
	r.Figures = figures(w.facts, r.Units)
	r.Assumptions = assumptions(w.facts, r.Results)
	if !q.IgnoreVariances {
		r.accept(d.Variances)
	}
	return r
}

func (q Request) telling() rules.Telling {
	if q.Brief {
		return rules.Problems
	}
	return rules.Everything
}

func systemOf(d *design.Design) quantity.System {
	if d.Project.Units == "SI" {
		return quantity.SI
	}
	return quantity.IP
}

// outermost leaves out packs that another of the list extends, and repetitions:
// their rules are asked once, as the extending pack has them.
func outermost(packs []*rules.Effective) []*rules.Effective {
	var kept []*rules.Effective
	for i, p := range packs {
		covered := false
		for k, other := range packs {
			covered = covered || k != i && other.Extends(p.Head.ID) || k < i && other.Head.ID == p.Head.ID
		}
		if !covered {
			kept = append(kept, p)
		}
	}
	return kept
}
