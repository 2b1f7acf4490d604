package impact

import (
	"cmp"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// Comparison is two packs that designs are judged under.
type Comparison struct {
	from, to *rules.Effective
	margin   float64
	pairs    []pair
}

// pair is one rule as each of the packs has it; nil where it does not.
type pair struct {
	id       string
	from, to *rules.Compiled
	same     bool // the packs judge alike: asking once is enough
}

// Compare prepares the comparison of two packs. margin is the share of a required
// value within which a pass is narrow, such as 0.05. The Comparison may be used
// by several goroutines at once.
func Compare(from, to *rules.Effective, margin float64) *Comparison {
	c := &Comparison{from: from, to: to, margin: margin}
	taken := map[*rules.Compiled]bool{}
	for _, r := range to.Rules {
		before := earlier(from, r)
		taken[before] = true
		c.pairs = append(c.pairs, pair{r.ID, before, r, before != nil && rules.SameOutcomes(from, before, to, r)})
	}
	for _, r := range from.Rules {
		if !taken[r] {
			c.pairs = append(c.pairs, pair{id: r.ID, from: r})
		}
	}
	slices.SortFunc(c.pairs, func(a, b pair) int { return cmp.Compare(a.id, b.id) })
	return c
}

// earlier is the rule of a pack that another pack has under the same or a later
// id.
func earlier(from *rules.Effective, r *rules.Compiled) *rules.Compiled {
	if found := from.Rule(r.ID); found != nil {
		return found
	}
	for _, alias := range r.Aliases {
		if found := from.Rule(alias); found != nil {
			return found
		}
	}
	return nil
}

// title is that of the newer rule.
func (p pair) title() string {
	if p.to != nil {
		return p.to.Title
	}
	return p.from.Title
}

// Case is one design under both packs.
type Case struct {
	Design   string
	From, To State
	rules    []ruleCase // one for each pair
}

// ruleCase is one rule for one design.
type ruleCase struct {
	change
	near *Near
}

// change is what became of something under the one pack and the other.
type change struct{ from, to State }

// Judge asks every rule of both packs of a design.
func (c *Comparison) Judge(name string, d *design.Design) Case {
	f := facts.Of(d)
	result := Case{Design: name, rules: make([]ruleCase, len(c.pairs))}
	from, to := make([]State, len(c.pairs)), make([]State, len(c.pairs))
	for i, p := range c.pairs {
		result.rules[i] = c.judge(p, f, name)
		from[i], to[i] = result.rules[i].from, result.rules[i].to
	}
	result.From, result.To = designState(from), designState(to)
	return result
}

func (c *Comparison) judge(p pair, f *facts.Facts, name string) ruleCase {
	result := ruleCase{change: change{NotHeld, NotHeld}}
	var worst rules.Outcome
	var near *Near
	if p.from != nil {
		worst, near = c.ask(p.from, f, name)
		result.from = stateOf(p.from, worst)
	}
	if p.to != nil {
		if !p.same {
			worst, near = c.ask(p.to, f, name)
		}
		result.to, result.near = stateOf(p.to, worst), near
	}
	return result
}

// ask asks a rule of a design: the worst outcome, and the narrowest pass.
func (c *Comparison) ask(rule *rules.Compiled, f *facts.Facts, name string) (worst rules.Outcome, near *Near) {
	worst = rules.NotApplicable
	rule.AskEach(f, rules.Margins, func(j rules.Judgement) {
		if j.Outcome.Worse(worst) {
			worst = j.Outcome
		}
		near = c.nearest(f.Design, name, j, near)
	})
	return worst, near
}
