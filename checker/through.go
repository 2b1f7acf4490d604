package checker

import (
	"fmt"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/site"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/expression"
	"github.com/ventlint/ventlint/rules/facts"
)

// throughBuilding warns of straight lines that a requirement does not hold for and
// that run through the building: what is as near as that is farther apart for the
// air.
func throughBuilding(f *facts.Facts, rule *rules.Compiled, j rules.Judgement, units quantity.System) []string {
	failing := j.Outcome == rules.Fail || j.Outcome == rules.Review
	if !failing || j.Require.Truth != expression.False || !slices.Contains(rule.Distances(), "distance") {
		return nil
	}
	var list []string
	for i := range j.Subjects {
		for k := range j.Subjects[:i] {
			if m := stringOf(f, j.Subjects[k], j.Subjects[i]); m.Through {
				list = append(list, fmt.Sprintf("the straight line runs through the building; along the outside it is %s", quantity.Format(m.Length, units)))
			}
		}
	}
	return list
}

// stringOf is the string between two subjects; none where one has no place.
func stringOf(f *facts.Facts, a, b any) site.Measurement {
	first, isPlaced := a.(design.Placed)
	second, arePlaced := b.(design.Placed)
	if !isPlaced || !arePlaced {
		return site.Measurement{}
	}
	m, _ := f.Taut(first, second)
	return m
}
