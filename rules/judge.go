package rules

import (
	"fmt"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
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
	c.AskEach(f, Everything, func(j Judgement) {
		j.Subjects = slices.Clone(j.Subjects)
		found = append(found, j)
	})
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
func (t Telling) when(o Outcome) expression.Depth {
	if t == Everything || t == Problems && o.Problem() {
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
// over as it is made: its subjects are those of the moment. A rule that is not due yet, or whose subjects the design does
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
	f.Problems += r.problems
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
