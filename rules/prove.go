package rules

import (
	"slices"

	"github.com/ventlint/ventlint/checker/document"
)

// Proof is what the samples of one rule show: whether each has its outcome, and
// which changes of the rule none of them notices.
//
// A rule that no override of the pack reaches is proven as its parent proves it:
// its samples are run, and nothing else is asked. One that an override reaches is
// proven by the samples that the pack gives, and by those of the parent that
// still show the same.
type Proof struct {
	Rule      *Compiled
	Runs      []SampleRun
	Inherited bool         // as its parent proves it
	Differing []SampleRun  // samples of the parent that show otherwise under an override
	Mutants   int          // changes tried
	Survivors []Mutant     // those that no sample noticed, in the order of the file
	Excused   int          // survivors that the rule lists as equivalent
	Unneeded  []Equivalent // listed, and noticed or unknown all the same
	Gaps      []string     // kinds of sample that are lacking
	Unshown   bool         // an override reaches the rule, and the pack gives no sample of it
	Untried   int          // samples that were not run: the pack takes more work than a proof may
	Unchanged bool         // not all changes were tried, for the same reason
}

// Mutant is one change of a rule.
type Mutant struct {
	Change   string // "`>=` turned into `>`"
	Part     string // require, when, judge_when, limit or table
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

// ProveRule proves a rule of the pack alone.
func (e *Effective) ProveRule(rule *Compiled) Proof { return e.Proving().Rule(rule) }

// Rule runs the samples of a rule of the pack, then changes the rule in every way
// that should matter and asks the samples again. A rule whose samples are wrong is
// not changed: nothing would follow from it.
func (v *Proving) Rule(rule *Compiled) Proof {
	p := Proof{Rule: rule, Inherited: rule.Pack != v.pack.Head.ID && len(rule.Reached) == 0}
	v.run(&p, rule.Samples, func(run SampleRun) { p.Runs = append(p.Runs, run) })
	if p.Inherited {
		return p
	}
	p.Unshown = len(rule.Reached) > 0 && len(rule.Samples) == 0
	v.run(&p, rule.Superseded, p.superseded)
	switch {
	case p.Untried > 0:
		p.Unchanged = true
		return p
	case p.Wrong() == 0:
		v.mutate(&p)
	}
	p.Gaps = rule.uncovered(p.samples())
	return p
}

// superseded takes a sample of the parent, of a rule that an override reaches.
func (p *Proof) superseded(run SampleRun) {
	if run.Passed() {
		p.Runs = append(p.Runs, run)
	} else {
		p.Differing = append(p.Differing, run)
	}
}

// Shown lists the samples that show what a rule of the pack does: its own, and
// those of the parent that still show the same where an override reaches it.
func (e *Effective) Shown(rule *Compiled) []Sample {
	p := Proof{Rule: rule}
	for _, s := range rule.Superseded {
		p.superseded(e.Run(rule, s))
	}
	return append(slices.Clone(rule.Samples), p.samples()...)
}

func (p *Proof) samples() []Sample {
	list := make([]Sample, len(p.Runs))
	for i, run := range p.Runs {
		list[i] = run.Sample
	}
	return list
}

// said notes which pack lists some changes as equivalent.
func said(list []Equivalent, by *Pack) []Equivalent {
	list = slices.Clone(list)
	for i := range list {
		list[i].pack = by.Head.ID
	}
	return list
}

func (c *Compiled) excuses(change string) bool {
	return slices.ContainsFunc(c.Equivalents, func(e Equivalent) bool { return e.Change == change })
}
