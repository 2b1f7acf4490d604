package rules

import (
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/expression"
	"github.com/ventlint/ventlint/rules/facts"
)

// run is one rule on one design.
type run struct {
	rule  *Compiled
	units quantity.System
	facts *facts.Facts
	scope *expression.Scope // of all subjects: its steps are those of the rule
	bound []any             // the subjects of the moment
	take  func(Judgement)
	cut   string // why not all subjects were judged

	telling Telling
	budget
	listing
}

// over binds the rule's names from one on, one after the other; a later list may
// depend on an earlier subject.
func (r *run) over(name int) {
	r.scope.Subjects = r.bound[:name]
	if name == len(r.bound) {
		r.one()
		return
	}
	items, err := r.rule.each[name].list.Items(r.scope)
	if err != nil {
		r.add(unanswered(err))
		return
	}
	for _, item := range items {
		r.bound[name] = item
		if r.over(name + 1); r.cut != "" {
			return
		}
	}
}

// unanswered is the judgement of a list that cannot be told.
func unanswered(err error) Judgement {
	e := unknown(err)
	return Judgement{Outcome: wanting(e), When: e, Message: saying(e), Reason: reason(e)}
}

// decide gives the outcome for the subjects of the moment. An unknown `when` leaves
// the rule open only where `require` does not hold anyway.
func (r *run) decide() (j Judgement) {
	j.When.Truth = expression.True
	if r.rule.when != nil {
		if j.When = r.evaluate(r.rule.when); j.When.Truth == expression.False {
			j.Outcome = NotApplicable
			return j
		}
	}
	j.Require = r.evaluate(r.rule.require)
	j.Outcome = r.outcome(&j)
	return j
}

// tell adds to a judgement of the subjects of the moment what is told of it.
func (r *run) tell(j *Judgement) {
	j.Subjects = r.scope.Subjects
	if len(j.Subjects) < len(r.bound) {
		return // a list that was not told
	}
	if r.rule.when != nil {
		j.When = r.reasons(r.rule.when, j.When, r.telling.when(j.Outcome), j.When.Truth == expression.Unknown)
	}
	if j.Outcome == NotApplicable {
		j.Reason = "its condition does not hold here"
		return
	}
	j.Require = r.reasons(r.rule.require, j.Require, r.telling.require(j.Require.Truth), j.Require.Truth != expression.True)
	r.word(j)
}

// outcome is what the truths of a judgement come to.
func (r *run) outcome(j *Judgement) Outcome {
	switch {
	case j.Require.Truth == expression.True:
		return Pass
	case j.Require.Truth != expression.False || j.When.Truth != expression.True:
		return wanting(join(j.When, j.Require))
	case r.rule.Judge || r.leaves():
		return Review
	}
	return Fail
}

// evaluate gives the truth of a condition. An evaluation that had to stop is
// unknown: a person must judge what the program could not.
func (r *run) evaluate(c *expression.Condition) expression.Explanation {
	e, err := c.Evaluate(r.scope, expression.Bare)
	if err != nil {
		return unknown(err)
	}
	return e
}

// reasons adds them to the truth of a condition.
func (r *run) reasons(c *expression.Condition, truth expression.Explanation, depth expression.Depth, problem bool) expression.Explanation {
	if depth == expression.Bare || depth == expression.WithFigures && !c.Figures() {
		return truth
	}
	pool, most := &r.facts.Told.Rest, mostRest
	if problem {
		pool, most = &r.facts.Told.Problems, mostProblems
	}
	r.apart(pool, most, func() {
		if e, err := c.Evaluate(r.scope, depth); err == nil {
			truth = e
		}
	})
	return truth
}

// apart evaluates what tells a judgement. It takes no steps from the rule, so that
// outcomes do not depend on what is told, but from a pool; what that does not reach
// for is left out.
func (r *run) apart(pool *int, most int, evaluate func()) {
	if left := most/r.facts.Packs - *pool; left > 0 {
		*pool += r.scope.Apart(left, evaluate)
	}
}

// word says what was found and what to do about it, where somebody asks.
func (r *run) word(j *Judgement) {
	if !j.Outcome.Problem() || r.telling >= Margins {
		return
	}
	clear := j.Require.Truth == expression.False && j.When.Truth == expression.True
	if clear {
		j.Message = "does not hold; the design holds too much to tell the figures of all that does not" // unless there is more to say
	}
	r.apart(&r.facts.Told.Problems, mostProblems, func() {
		if clear {
			j.Message = r.rule.says.Text(r.scope, r.units)
		}
		j.Remedy = r.rule.remedy.Text(r.scope, r.units)
	})
	switch e := join(j.When, j.Require); {
	case !clear:
		j.Message, j.Reason = saying(e), reason(e)
	case j.Outcome == Review:
		j.Reason = "the rule leaves this to a person's judgement"
	}
}

// leaves tells whether the rule leaves this failure to a person: its judge_when
// holds. Where that is not known, the failure stands.
func (r *run) leaves() bool {
	return r.rule.judging != nil && r.evaluate(r.rule.judging).Truth == expression.True
}
