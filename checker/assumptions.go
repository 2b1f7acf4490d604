package checker

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules/facts"
)

// assumptions lists what the review took for want of a figure: a source that the
// design calls a point has no size.
func assumptions(f *facts.Facts, results []Result) []Assumption {
	if !measured(results) {
		return nil
	}
	var list []Assumption
	for _, s := range f.Design.Sources {
		if f.Site.PointOnly(s) {
			list = append(list, Assumption{
				Text:  fmt.Sprintf("no size of %s: its place is taken as that of its nearest edge", design.Label(s)),
				Basis: "the design says that it is a point",
			})
		}
	}
	return list
}

func measured(results []Result) bool {
	for i := range results {
		if results[i].measures {
			return true
		}
	}
	return false
}
