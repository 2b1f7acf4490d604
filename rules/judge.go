package rules

import (
	"errors"
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/expression"
	"github.com/ventlint/ventlint/rules/facts"
)

// Judgement is the outcome of one rule for one tuple of subjects.
type Judgement struct {
	Subjects []any // in the order of the rule's each; empty for the dwelling as a whole
	Outcome  Outcome
	When     expression.Explanation
	Require  expression.Explanation
	Message  string
	Remedy   string
	Reason   string // why the rule does not apply, is not due, or a person must judge
	Cut      bool   // not all subjects were judged: the rule, or the design, asks too much
}

// Ask asks the rule of every subject that the design has, and tells everything.
func (c *Compiled) Ask(f *facts.Facts) []Judgement {
	var found []Judgement
	c.AskEach(f, Everything, func(j Judgement) { found = append(found, j) })
	return found
}

// Telling is what judgements come with beside their outcomes.
type Telling int

// What judgements tell.
const (
	Everything    Telling = iota // all reasons
	Problems                     // the reasons of what fails or is not known, and what to do about it
	Margins                      // the comparisons of requirements that are met
	OutcomesAlone                // nothing
)

// when is how a condition `when` is told.
func (t Telling) when(truth expression.Truth) expression.Depth {
	if t == Everything || t == Problems && truth == expression.Unknown {
		return expression.WithReads
	}
	return expression.Bare
}

// require is how a requirement is told.
func (t Telling) require(truth expression.Truth) expression.Depth {
	switch met := truth == expression.True; {
	case t == Everything, t == Problems && !met:
		return expression.WithReads
	case t == Margins && met:
		return expression.WithFigures
	}
	return expression.Bare
}

// AskEach asks the rule of every subject that the design has, and hands each judgement
// over as it is made. A rule that is not due yet, or whose subjects the design does
// not have, gives one judgement that says so. Outcomes do not depend on what is told.
func (c *Compiled) AskEach(f *facts.Facts, t Telling, take func(Judgement)) {
	if !due(f.Design.Project.Stage, c.Due) {
		take(Judgement{Outcome: NotDue, Reason: fmt.Sprintf("due from stage %q; the design is at stage %q", c.Due, f.Design.Project.Stage)})
		return
	}
	r := &run{rule: c, units: units(f.Design, c.Rule.Topic), facts: f, scope: f.Scope, take: take, budget: budgetOf(f), telling: t}
	r.scope.Refuel(r.steps())
	r.over(nil)
	f.Work += r.work()
	switch {
	case r.cut != "":
		take(Judgement{Outcome: Review, Message: r.cut, Reason: r.cut, Cut: true})
	case r.judged == 0:
		take(Judgement{Outcome: NotApplicable, Reason: c.nothing()})
	}
}

func due(at, from design.Stage) bool {
	for _, s := range design.Stage("").Values() {
		switch design.Stage(s) {
		case from:
			return true
		case at:
			return false
		}
	}
	return true
}

// nothing says that the design has none of what a rule ranges over.
func (c *Compiled) nothing() string {
	text := "the design has no "
	for i, e := range c.Each() {
		if i > 0 {
			text += " with "
		}
		text += e.Name
	}
	return text
}

// units are those in which a rule of a topic tells what it found.
func units(d *design.Design, t Topic) quantity.System {
	if d.Project.Units == "SI" {
		return quantity.SI
	}
	return t.System(quantity.IP)
}

// run is one rule on one design.
type run struct {
	rule  *Compiled
	units quantity.System
	facts *facts.Facts
	scope *expression.Scope // of all subjects: its steps are those of the rule
	take  func(Judgement)
	cut   string // why not all subjects were judged

	telling Telling
	budget
}

// over binds the rule's names one after the other; a later list may depend
// on an earlier subject.
func (r *run) over(bound []any) {
	r.scope.Subjects = bound
	if len(bound) == len(r.rule.each) {
		r.one(bound)
		return
	}
	items, err := r.rule.each[len(bound)].list.Items(r.scope)
	if err != nil {
		r.add(r.unknown(bound, err))
		return
	}
	for _, item := range items {
		if r.over(append(bound[:len(bound):len(bound)], item)); r.cut != "" {
			return
		}
	}
}

// unknown is the judgement of a list that cannot be told.
func (r *run) unknown(bound []any, err error) Judgement {
	e := unknown(err)
	return Judgement{Subjects: bound, Outcome: wanting(e), When: e, Message: saying(e), Reason: reason(e)}
}

// judge decides one tuple of subjects. An unknown `when` leaves the rule open
// only where `require` does not hold anyway.
func (r *run) judge(bound []any) Judgement {
	j := Judgement{Subjects: bound}
	j.When.Truth = expression.True
	if r.rule.when != nil {
		j.When = r.evaluate(r.rule.when)
		if j.When.Truth == expression.False {
			j.Outcome, j.Reason = NotApplicable, "its condition does not hold here"
		}
	}
	if j.Outcome == "" {
		j.Require = r.evaluate(r.rule.require)
		j.Outcome = r.outcome(&j)
	}
	if r.rule.when != nil {
		j.When = r.reasons(r.rule.when, j.When, r.telling.when(j.When.Truth), j.When.Truth == expression.Unknown)
	}
	if j.Outcome != NotApplicable {
		j.Require = r.reasons(r.rule.require, j.Require, r.telling.require(j.Require.Truth), j.Require.Truth != expression.True)
	}
	r.word(&j)
	return j
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
	pool := &r.facts.Told.Rest
	if problem {
		pool = &r.facts.Told.Problems
	}
	r.apart(pool, func() {
		if e, err := c.Evaluate(r.scope, depth); err == nil {
			truth = e
		}
	})
	return truth
}

// apart evaluates what tells a judgement. It takes no steps from the rule, so that
// outcomes do not depend on what is told, but from a pool; what that does not reach
// for is left out.
func (r *run) apart(pool *int, evaluate func()) {
	if left := mostTold - *pool; left > 0 {
		*pool += r.scope.Apart(left, evaluate)
	}
}

func unknown(err error) expression.Explanation {
	e := expression.Explanation{Truth: expression.Unknown}
	var one *document.Missing
	var many document.MissingAll
	var judge *expression.Undetermined
	switch {
	case errors.As(err, &many):
		e.Missing = append(e.Missing, many...)
	case errors.As(err, &one):
		e.Missing = append(e.Missing, *one)
	case errors.As(err, &judge):
		e.Undetermined = []string{judge.Reason}
	default:
		e.Undetermined = []string{"could not be evaluated: " + err.Error()}
	}
	return e
}

// word says what was found and what to do about it, where somebody asks.
func (r *run) word(j *Judgement) {
	if j.Outcome == Pass || j.Outcome == NotApplicable || r.telling >= Margins {
		return
	}
	clear := j.Require.Truth == expression.False && j.When.Truth == expression.True
	r.apart(&r.facts.Told.Problems, func() {
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

// join adds what an unknown condition and an unknown requirement lack.
func join(when, require expression.Explanation) expression.Explanation {
	var e expression.Explanation
	for _, part := range []expression.Explanation{when, require} {
		if part.Truth == expression.Unknown {
			e.Missing = append(e.Missing, part.Missing...)
			e.Undetermined = append(e.Undetermined, part.Undetermined...)
		}
	}
	return e
}

// wanting is open where an input is missing: giving it may settle the rule.
func wanting(e expression.Explanation) Outcome {
	if len(e.Missing) > 0 {
		return Open
	}
	return Review
}

// mostNamed is how many missing inputs a message names; the result has them all.
const mostNamed = 50

func saying(e expression.Explanation) string {
	if len(e.Missing) == 0 {
		return reason(e)
	}
	names := distinct(e.Missing)
	if more := len(names) - mostNamed; more > 0 {
		names = append(names[:mostNamed:mostNamed], fmt.Sprintf("and %d more", more))
	}
	return "needs " + strings.Join(names, ", ")
}

func distinct(missing []document.Missing) []string {
	seen := map[string]bool{}
	var names []string
	for _, m := range missing {
		if name := m.Ref.KeyName(m.Key); !seen[name] {
			seen[name] = true
			names = append(names, name)
		}
	}
	return names
}

func reason(e expression.Explanation) string { return strings.Join(e.Undetermined, "; ") }
