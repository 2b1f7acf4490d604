package checker

import (
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// stated tells which dimensions of a drawing stood in for geometry.
func stated(f *facts.Facts, rule *rules.Compiled, things []any) []string {
	if !rule.Measures() {
		return nil
	}
	var list []string
	for i := range things {
		for k := range things[:i] {
			if s := f.Site.Stated(things[k], things[i]); s != nil {
				list = append(list, statement(s))
			}
		}
	}
	return list
}

func statement(s *design.StatedDistance) string {
	text := fmt.Sprintf("the distance between %s is stated, not computed", strings.Join(s.Between, " and "))
	if s.Drawing != nil {
		text += ": " + *s.Drawing
	}
	return text
}
