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

// changes is how a report differs from the baseline. A nil one, of a run without
// a baseline, knows of no result whether it is new.
type changes struct {
	known  map[*checker.Result]bool
	absent []earlier
}

// changes compares a report with the baseline. Of several results that nothing
// but their place tells apart, as many are known as the baseline has.
func (b *Baseline) changes(report *checker.Report) *changes {
	if b == nil {
		return nil
	}
	before := b.results[fileKey(report.File)]
	left := map[identity]int{}
	for _, e := range before {
		left[e.identity]++
	}
	c := &changes{known: map[*checker.Result]bool{}}
	for i := range report.Results {
		r := &report.Results[i]
		if id := identityOf(report.File, r); left[id] > 0 {
			left[id]--
			c.known[r] = true
		}
	}
	for _, e := range before {
		if left[e.identity] > 0 {
			left[e.identity]--
			c.absent = append(c.absent, e)
		}
	}
	return c
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
	return fresh, known, len(c.gone())
}

// gone lists the problems of the baseline that the report no longer has.
func (c *changes) gone() []earlier {
	var all []earlier
	for _, e := range c.absent {
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
func (c *changes) farewells() []string {
	if c == nil {
		return nil
	}
	var all []string
	for _, e := range c.gone() {
		all = append(all, fmt.Sprintf("%s (%s, %s)", e.Message, e.Rule, e.Outcome))
	}
	return all
}
