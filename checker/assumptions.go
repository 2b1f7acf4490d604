package checker

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules/facts"
)

// assumptions lists what the review took although the design does not say it:
// a thing without a size is measured from its centre.
func assumptions(f *facts.Facts, results []Result) []Assumption {
	if !measured(results) {
		return nil
	}
	var list []Assumption
	for _, s := range f.Design.Sources {
		if f.Site.PointOnly(s) {
			list = append(list, Assumption{
				Text:  fmt.Sprintf("%s is measured from its centre: its size is not given", design.Label(s)),
				Basis: "practice; a real edge lies nearer",
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
