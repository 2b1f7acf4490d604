package properties

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// absenceIsFact are keys that say something by being there.
var absenceIsFact = map[string]string{
	"appliance.connected_to": "an appliance shares the ducts of a ventilator only where one is named",
	"opening.fitting":        "an opening without the word is none of a combination fitting, and must keep its distance",
	"dwelling.leakage.basis": "only a leakage that is said to be tested earns a credit",
}

// withoutInputs: a design that says less never makes a rule content that was not.
// A file that is refused for what it lacks is no case.
func withoutInputs(s *specimen) (int, error) {
	seen := 0
	for range 2 {
		less := sheetOf(s.text)
		gone := less.forget(s)
		d, err := load(less.text())
		if err != nil {
			continue
		}
		seen++
		if err := contented(s.whole, ask(facts.Of(d), s.rules)); err != nil {
			return seen, fmt.Errorf("without %s: %w", strings.Join(gone, ", "), err)
		}
	}
	return seen, nil
}

// forget leaves out one to three keys.
func (s *sheet) forget(of *specimen) []string {
	var gone []string
	for range 1 + of.r.IntN(3) {
		p := s.parts()[of.r.IntN(len(s.parts()))]
		var may []int
		for i, e := range p.entries {
			if absenceIsFact[p.noun()+"."+e.key] == "" && e.key != "id" && e.key != "kind" {
				may = append(may, i)
			}
		}
		if len(may) == 0 {
			continue
		}
		i := may[of.r.IntN(len(may))]
		gone = append(gone, p.noun()+"."+p.entries[i].key+" = "+p.entries[i].value)
		p.entries = slices.Delete(p.entries, i, i+1)
	}
	return gone
}

// asks tells whether an outcome wants something of the designer.
func asks(o rules.Outcome) bool {
	return o == rules.Fail || o == rules.Open || o == rules.Review
}

// asking counts the outcomes that ask something.
func asking(list []rules.Outcome) int {
	n := 0
	for _, o := range list {
		if asks(o) {
			n++
		}
	}
	return n
}

// contented tells the first rule that asked for something and asks no more.
func contented(was, is verdicts) error {
	var keys []string
	for about := range was {
		keys = append(keys, about)
	}
	sort.Strings(keys)
	for _, about := range keys {
		if asking(is[about]) < asking(was[about]) {
			return fmt.Errorf("%s was %v, is %v", about, was[about], is[about])
		}
	}
	return nil
}
