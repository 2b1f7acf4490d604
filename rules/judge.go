package rules

import (
	"errors"
	"fmt"
	"slices"
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
	Others   int    // further tuples of this outcome that are not told one by one; such a judgement has no subjects
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
	r := &run{rule: c, units: units(f.Design, c.Rule.Topic), facts: f, scope: f.Scope, bound: make([]any, len(c.each)), take: take, budget: budgetOf(f), telling: t}
	r.scope.Refuel(r.steps())
	r.over(0)
	f.Work += r.work()
	r.rest()
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
	j.Subjects = slices.Clone(r.scope.Subjects)
	if len(j.Subjects) < len(r.bound) {
		return // a list that was not told
	}
	if r.rule.when != nil {
		j.When = r.reasons(r.rule.when, j.When, r.telling.when(j.When.Truth), j.When.Truth == expression.Unknown)
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
	if !j.Outcome.problem() || r.telling >= Margins {
		return
	}
	clear := j.Require.Truth == expression.False && j.When.Truth == expression.True
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
