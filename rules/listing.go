package rules

import "fmt"

// How many judgements that ask nothing of anybody are told one by one: of one rule and
// outcome, and of all rules on one design. No house comes near. The others are counted,
// so that a giant site is judged in full and told in brief.
const (
	mostAlike  = 250
	mostListed = 4_000
)

// listing is what a rule has told of what passes, and of what does not apply.
type listing struct{ told, others [2]int }

// listed tells whether one more judgement that is no problem is told by itself, and
// counts it.
func (r *run) listed(o Outcome) bool {
	if r.telling >= Margins {
		return true // what these tell is not kept
	}
	kind := 0
	if o == NotApplicable {
		kind = 1
	}
	if r.told[kind] == mostAlike || r.facts.Told.Listed >= mostListed/r.facts.Packs {
		r.others[kind]++
		return false
	}
	r.told[kind]++
	r.facts.Told.Listed++
	return true
}

// rest tells how many judgements were not told one by one.
func (r *run) rest() {
	for kind, o := range []Outcome{Pass, NotApplicable} {
		if n := r.others[kind]; n > 0 {
			r.take(Judgement{Outcome: o, Others: n, Reason: fmt.Sprintf("%d further combinations of things come out so, and are not listed", n)})
		}
	}
}
