package design

import (
	"slices"
	"strings"
	"time"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// statedDistances refuses distances that cannot be, or are stated twice.
func (c *checker) statedDistances() {
	seen := map[string]*StatedDistance{}
	for _, s := range c.design.StatedDistances {
		if !c.pair(s) {
			continue
		}
		if s.Distance != nil && s.Horizontal != nil && q.Compare(float64(*s.Distance), float64(*s.Horizontal)) < 0 {
			c.report(s.Ref, "distance", "", "found %s, expected at least %s, the horizontal distance", c.written(s.Ref, "distance", *s.Distance), c.print(*s.Horizontal))
		}
		if s.Distance != nil && s.Rise != nil && q.Compare(float64(*s.Distance), float64(*s.Rise)) < 0 {
			c.report(s.Ref, "distance", "", "found %s, expected at least %s, the rise", c.written(s.Ref, "distance", *s.Distance), c.print(*s.Rise))
		}
		c.statedOnce(s, seen)
	}
}

// pair tells whether a stated distance is between two things that have a place.
func (c *checker) pair(s *StatedDistance) bool {
	if len(s.Between) != 2 {
		if s.Given("between") {
			c.report(s.Ref, "between", "", "found %d, expected the ids of two things", len(s.Between))
		}
		return false
	}
	if s.Between[0] == s.Between[1] {
		c.report(s.Ref, "between", "", "found %q twice, expected the ids of two things", s.Between[0])
		return false
	}
	ok := true
	for _, id := range s.Between {
		ok = c.target(s.Ref, "between", id, "an opening, source or line", hasPlace) != nil && ok
	}
	return ok
}

func hasPlace(thing any) bool { _, ok := thing.(Placed); return ok }

// statedOnce refuses a second value for what is stated already. A rise counts
// from the first thing to the second; the others count both ways.
func (c *checker) statedOnce(s *StatedDistance, seen map[string]*StatedDistance) {
	for _, key := range []string{"distance", "horizontal", "rise"} {
		if !s.Given(key) {
			continue
		}
		pair := slices.Clone(s.Between)
		if key != "rise" {
			slices.Sort(pair)
		}
		name := key + " " + strings.Join(pair, " ")
		if first := seen[name]; first != nil {
			c.report(s.Ref, key, "", "the %s between %s is stated twice, first on line %d", key, quoted(s.Between), first.At(key).Line)
			continue
		}
		seen[name] = s
	}
}

// dates refuses a date that is not on the calendar.
func (c *checker) dates() {
	m := c.design.Commissioning
	if m == nil || m.Date == nil {
		return
	}
	if _, err := time.Parse(time.DateOnly, *m.Date); err != nil {
		c.report(m.Ref, "date", "", "found %q, expected a date such as \"2026-03-31\"", *m.Date)
	}
}
