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

// Blocked tells whether any result of the batch makes the review fail.
func (b Batch) Blocked() bool {
	c := b.changes()
	for _, report := range b.Reports {
		for i := range report.Results {
			if b.Gate.stops(&report.Results[i], c) {
				return true
			}
		}
	}
	return false
}

func (g Gate) stops(r *checker.Result, c *changes) bool {
	return r.Blocks(cmp.Or(g.Level, rules.Error)) && !(g.NewOnly && c.state(r) == unchangedState)
}
