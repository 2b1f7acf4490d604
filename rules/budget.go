package rules

import (
	"fmt"

	"github.com/ventlint/ventlint/rules/facts"
)

// The bounds of one rule on one design. They are far beyond what a house needs,
// and keep a hostile pack from running on.
const (
	mostTuples = 50_000  // of subjects
	mostSteps  = 300_000 // elements of lists and calls of functions
)

// mostWork bounds all rules on one design together, so that neither a hostile design
// nor a hostile pack takes all time and memory. A site of 200 openings and 500
// sources under two packs fits in, and takes as much as 200 whole houses.
const mostWork = 20_000_000

// What is counted as work, as it takes time and memory: a judgement, what is told
// of a problem, and a step.
const (
	judgementWork = 40
	problemWork   = 3_200
	stepWork      = 3
)

// The steps that go into reasons, which are apart from those of rules: what is not
// reached for any more is told as outcomes alone.
const (
	mostProblems = 200_000 // into reasons of problems
	mostRest     = 20_000  // into those of what passes or does not apply
)

// budget is what one rule may spend.
type budget struct {
	left     int // of the work of all rules
	judged   int // tuples
	problems int // of them
}

func budgetOf(f *facts.Facts) budget { return budget{left: mostWork/f.Packs - f.Work} }

// steps are those that the scope of the rule may take.
func (b *budget) steps() int { return max(1, min(mostSteps, b.left/stepWork)) }

// work is what the rule has taken so far.
func (r *run) work() int {
	return judgementWork*r.judged + problemWork*r.problems + stepWork*(r.steps()-r.scope.Left())
}

// one judges one tuple of subjects, and stops where the rule asks too much.
func (r *run) one() {
	if r.judged == mostTuples {
		r.cut = fmt.Sprintf("the rule ranges over more than %d combinations of things: a person must judge those beyond", mostTuples)
		return
	}
	if r.work() >= r.left {
		r.cut = tooMuch
		return
	}
	r.add(r.decide())
}

const tooMuch = "the design holds too much for all rules to be judged: a person must judge what was not reached"

func (r *run) add(j Judgement) {
	if r.scope.Spent() {
		r.cut = tooMuch
		if r.steps() == mostSteps {
			r.cut = fmt.Sprintf("the rule takes more than %d steps on this design: a person must judge what was not reached", mostSteps)
		}
		if j.Outcome != Fail {
			return
		}
	}
	r.judged++
	if j.Outcome.Problem() {
		r.problems++
	} else if !r.listed(j.Outcome) {
		return
	}
	r.tell(&j)
	r.take(j)
}
