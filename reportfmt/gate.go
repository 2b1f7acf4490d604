package reportfmt

import (
	"cmp"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// Gate is what makes a review fail.
type Gate struct {
	Level   rules.Level // least level that does; error when empty
	NewOnly bool        // only what the baseline does not have
}

// blocks tells whether any result of a report makes the review fail.
func (g Gate) blocks(report *reviewed) bool {
	for i := range report.Results {
		if g.stops(&report.Results[i], report.changes) {
			return true
		}
	}
	return false
}

func (g Gate) stops(r *checker.Result, c *changes) bool {
	return r.Blocks(cmp.Or(g.Level, rules.Error)) && !(g.NewOnly && c.state(r) == unchangedState)
}
