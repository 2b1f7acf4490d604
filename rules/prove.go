package rules

import (
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules/facts"
)

// Proof is what the samples of one rule show: whether each has its outcome, and
// which changes of the rule none of them notices.
type Proof struct {
	Rule      *Compiled
	Runs      []SampleRun
	Mutants   int      // changes tried
	Survivors []Mutant // those that no sample noticed, in the order of the file
	Excused   int      // survivors that the rule lists as equivalent
	Gaps      []string // kinds of sample that are lacking
}

// Mutant is one change of a rule.
type Mutant struct {
	Change   string // "`>=` turned into `>`"
	Part     string // require, when, limit or table
	File     string
	Position document.Position
}

// Wrong counts the samples that do not show what they say.
func (p Proof) Wrong() int {
	n := 0
	for _, r := range p.Runs {
		if !r.Passed() {
			n++
		}
	}
	return n
}

// ProveRule runs the samples of a rule of the pack, then changes the rule in
// every way that should matter and asks the samples again. A rule whose samples
// are wrong is not changed: nothing would follow from it.
func (e *Effective) ProveRule(rule *Compiled) Proof {
	p := Proof{Rule: rule, Runs: e.Prove(rule), Gaps: rule.Uncovered()}
	if p.Wrong() > 0 {
		return p
	}
	var designs []sampled
	for _, s := range rule.Samples {
		if d, err := e.sampleDesign(rule, s); err == nil {
			f := facts.Of(d)
			designs = append(designs, sampled{f, Outcome(s.Expect)})
		}
	}
	for _, m := range e.mutants(rule) {
		p.Mutants++
		switch {
		case noticed(m.rule, designs):
		case rule.excuses(m.Change):
			p.Excused++
		default:
			p.Survivors = append(p.Survivors, m.Mutant)
		}
	}
	return p
}

// sampled is the design of a sample and the outcome that it has.
type sampled struct {
	facts  *facts.Facts
	expect Outcome
}

func noticed(rule *Compiled, designs []sampled) bool {
	for _, d := range designs {
		if worst(rule.Ask(d.facts)) != d.expect {
			return true
		}
	}
	return false
}

func (c *Compiled) excuses(change string) bool {
	for _, e := range c.Equivalents {
		if e.Change == change {
			return true
		}
	}
	return false
}
