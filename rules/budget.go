package rules

import (
	"fmt"

	"github.com/ventlint/ventlint/rules/facts"
)

// The bounds of one rule on one design. They are far beyond what a house needs,
// and keep a hostile pack from running on.
const (
	mostTuples = 5_000   // of subjects
	mostSteps  = 150_000 // elements of lists and calls of functions
)

// mostWork bounds all rules on one design together, so that neither a hostile design
// nor a hostile pack takes all time and memory. A whole house under two packs takes
// a tenth.
const mostWork = 480_000

// mostTold bounds the steps that go into the reasons of problems on one design, and
// those that go into the rest. Beyond it there are outcomes alone.
const mostTold = 150_000

// What is counted as work, as it takes time: a judgement with what it tells, and a
// step. It is the same however much of a judgement is recorded.
const (
	judgementWork = 80
	stepWork      = 3
)

// budget is what one rule may spend.
type budget struct {
	left   int // of the work of all rules
	judged int // tuples
}

func budgetOf(f *facts.Facts) budget { return budget{left: mostWork - f.Work} }

// steps are those that the scope of the rule may take.
func (b *budget) steps() int { return max(1, min(mostSteps, b.left/stepWork)) }

// work is what the rule has taken so far.
func (r *run) work() int { return judgementWork*r.judged + stepWork*(r.steps()-r.scope.Left()) }

// one judges one tuple of subjects, and stops where the rule asks too much.
func (r *run) one(bound []any) {
	if r.judged == mostTuples {
		r.cut = fmt.Sprintf("the rule ranges over more than %d combinations of things: a person must judge those beyond", mostTuples)
		return
	}
	if r.work() >= r.left {
		r.cut = tooMuch
		return
	}
	r.add(r.judge(bound))
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
	r.take(j)
}
