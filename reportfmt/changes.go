package reportfmt

import (
	"fmt"

	"github.com/ventlint/ventlint/checker"
)

// Words for what became of a result since the baseline; those of SARIF 2.1.0.
const (
	newState       = "new"
	unchangedState = "unchanged"
	absentState    = "absent"
)

// changes is how a batch differs from its baseline. A nil one, of a batch
// without a baseline, knows of no result whether it is new.
type changes struct {
	known  map[*checker.Result]bool
	absent map[*checker.Report][]earlier // of the files that the batch reviewed
}

// changes compares a batch with its baseline. Of several results that nothing
// but their place tells apart, as many are known as the baseline has.
func (b Batch) changes() *changes {
	if b.Baseline == nil {
		return nil
	}
	left := map[identity]int{}
	for _, e := range b.Baseline.results {
		left[e.identity]++
	}
	c := &changes{map[*checker.Result]bool{}, map[*checker.Report][]earlier{}}
	for _, report := range b.Reports {
		for i := range report.Results {
			if r := &report.Results[i]; left[identityOf(report.File, r)] > 0 {
				left[identityOf(report.File, r)]--
				c.known[r] = true
			}
		}
	}
	c.findAbsent(b, left)
	return c
}

// findAbsent lists the earlier results that no result of the batch took up.
func (c *changes) findAbsent(b Batch, left map[identity]int) {
	for _, report := range b.Reports {
		for _, e := range b.Baseline.results {
			if e.File == fileKey(report.File) && left[e.identity] > 0 {
				left[e.identity]--
				c.absent[report] = append(c.absent[report], e)
			}
		}
	}
}

// state is empty without a baseline.
func (c *changes) state(r *checker.Result) string {
	switch {
	case c == nil:
		return ""
	case c.known[r]:
		return unchangedState
	}
	return newState
}

// news counts the problems of a report that are new, those that were known, and
// those that are gone.
func (c *changes) news(report *checker.Report) (fresh, known, gone int) {
	for i := range report.Results {
		r := &report.Results[i]
		switch {
		case !r.Problem():
		case c.known[r]:
			known++
		default:
			fresh++
		}
	}
	return fresh, known, len(c.gone(report))
}

// gone lists the problems of the baseline that a report no longer has.
func (c *changes) gone(report *checker.Report) []earlier {
	var all []earlier
	for _, e := range c.absent[report] {
		if e.problem() {
			all = append(all, e)
		}
	}
	return all
}

// text tells how a report differs from the baseline; empty without one.
func (c *changes) text(report *checker.Report) string {
	if c == nil {
		return ""
	}
	fresh, known, gone := c.news(report)
	return fmt.Sprintf("Compared with the earlier review, %d new, %d known, %d gone.", fresh, known, gone)
}

// mark follows the title of a problem that is new.
func (c *changes) mark(r *checker.Result) string {
	if c.state(r) == newState && r.Problem() {
		return " (new)"
	}
	return ""
}

// farewells tells what each problem was that is gone.
func (c *changes) farewells(report *checker.Report) []string {
	if c == nil {
		return nil
	}
	var all []string
	for _, e := range c.gone(report) {
		all = append(all, fmt.Sprintf("%s (%s, %s)", e.Message, e.Rule, e.Outcome))
	}
	return all
}
