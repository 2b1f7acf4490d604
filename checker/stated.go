package checker

import (
	"fmt"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/site"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// stated tells which dimensions of a drawing stood in for geometry.
func stated(f *facts.Facts, rule *rules.Compiled, things []any) []string {
	if len(f.Design.StatedDistances) == 0 {
		return nil
	}
	var used []*design.StatedDistance
	for i := range things {
		for k := range things[:i] {
			for _, function := range rule.Distances() {
				s := drawing(f.Site, function, things[k], things[i])
				if s != nil && !slices.Contains(used, s) {
					used = append(used, s)
				}
			}
		}
	}
	var list []string
	for _, s := range used {
		list = append(list, statement(s))
	}
	return list
}

// drawing is the dimension that a function of rules took in place of geometry;
// nil when it computed.
func drawing(s *site.Site, function string, a, b any) *design.StatedDistance {
	switch function {
	case "distance", "taut":
		return s.StatedDistance(a, b)
	case "horizontal":
		return s.StatedHorizontal(a, b)
	case "rise":
		return s.StatedRise(a, b)
	}
	return nil
}

func statement(s *design.StatedDistance) string {
	text := fmt.Sprintf("the distance between %s is stated, not computed", strings.Join(s.Between, " and "))
	if s.Drawing != nil {
		text += ": " + *s.Drawing
	}
	return text
}
