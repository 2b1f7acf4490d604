package properties

import (
	"fmt"
	"regexp"
	"slices"
	"sort"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// verdicts are the outcomes of rules, by rule and subjects. Subjects without an id
// share a name, and their outcomes stand sorted.
type verdicts map[string][]rules.Outcome

func load(text string) (*design.Design, error) {
	d, problems := design.Load("house.vent.toml", []byte(text))
	if len(problems) > 0 {
		p := problems[0]
		return nil, fmt.Errorf("%d:%d: %s: %s", p.Position.Line, p.Position.Column, p.Path, p.Message)
	}
	return d, nil
}

func ask(f *facts.Facts, asked []*rules.Compiled) verdicts {
	all := verdicts{}
	for i, rule := range asked {
		for _, j := range rule.Ask(f) {
			about := fmt.Sprintf("%s:%s#%d", rule.Pack, rule.ID, i)
			for _, subject := range j.Subjects {
				about += " " + called(subject)
			}
			all[about] = append(all[about], j.Outcome)
		}
	}
	for _, list := range all {
		slices.Sort(list)
	}
	return all
}

// called is the label of a thing, without its place where it has no id.
func called(thing any) string {
	return unnumbered.ReplaceAllString(design.Label(thing), "")
}

var unnumbered = regexp.MustCompile(`\[[0-9]+\]`)

// differ tells the first difference of two sets of verdicts; nil without one.
func differ(a, b verdicts) error {
	var keys []string
	for about := range a {
		keys = append(keys, about)
	}
	for about := range b {
		if a[about] == nil {
			keys = append(keys, about)
		}
	}
	sort.Strings(keys)
	for _, about := range keys {
		if !slices.Equal(a[about], b[about]) {
			return fmt.Errorf("%s was %v, is %v", about, a[about], b[about])
		}
	}
	return nil
}

// same compares the verdicts of a design with those of what was made of it.
func (s *specimen) same(text string) error {
	d, err := load(text)
	if err != nil {
		return err
	}
	return differ(s.whole, ask(facts.Of(d), s.rules))
}
