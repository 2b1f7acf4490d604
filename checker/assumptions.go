package checker

import (
	"fmt"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// assumptions lists what the review took for want of a figure: a source that the
// design calls a point has no size, where any rule measures.
func assumptions(f *facts.Facts, packs []*rules.Effective) []Assumption {
	var list []Assumption
	for _, s := range f.Design.Sources {
		if f.Site.PointOnly(s) {
			list = append(list, Assumption{
				Text:  fmt.Sprintf("no size of %s: its place is taken as that of its nearest edge", design.Label(s)),
				Basis: "the design says that it is a point",
			})
		}
	}
	if len(list) == 0 || !slices.ContainsFunc(packs, measuring) {
		return nil
	}
	return list
}

// measuring tells whether a rule of a pack measures distances.
func measuring(pack *rules.Effective) bool {
	return slices.ContainsFunc(pack.Rules, func(r *rules.Compiled) bool { return len(r.Distances()) > 0 })
}
