package checker

import (
	"sort"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// Request is what a review needs beside the design.
type Request struct {
	File            string // how reports call the design
	Packs           []*rules.Effective
	Date            string // day of the review, YYYY-MM-DD
	IgnoreVariances bool   // judge as if the design recorded none
}

// Review asks every rule of the packs of a design. It always gives a report: a
// pack that cannot be used is refused when it is loaded, a design when it is read.
func Review(d *design.Design, q Request) *Report {
	r := &Report{File: q.File, Design: d, Units: systemOf(d), Date: q.Date}
	f := facts.Of(d)
	for _, pack := range outermost(q.Packs) {
		r.Packs = append(r.Packs, PackUsed{pack.Head.ID, pack.Head.Title, pack.Head.Edition, pack.Digest()})
		for _, rule := range pack.Rules {
			for _, j := range rule.Ask(f) {
				r.Results = append(r.Results, resultOf(r, f, pack, rule, j))
			}
		}
	}
	r.Figures = figures(f, r.Units)
	r.Assumptions = assumptions(f, r.Results)
	order(r.Results)
	if !q.IgnoreVariances {
		r.accept(d.Variances)
	}
	return r
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

// order puts results in the order of the file, then by rule: the same for
// every run.
func order(results []Result) {
	sort.SliceStable(results, func(i, j int) bool {
		a, b := &results[i], &results[j]
		switch {
		case a.Position.Line != b.Position.Line:
			return a.Position.Line < b.Position.Line
		case a.Position.Column != b.Position.Column:
			return a.Position.Column < b.Position.Column
		case a.Pack != b.Pack:
			return a.Pack < b.Pack
		}
		return a.Rule.ID < b.Rule.ID
	})
}
