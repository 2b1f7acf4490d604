package expression

import "github.com/expr-lang/expr/ast"

// junction is `and` or `or`.
type junction struct {
	part
	decides Truth // the truth that one side settles: False for and, True for or
	sides   [2]term
}

func (t *junction) lower(l *lowering) ast.Node {
	word := "and"
	if t.decides == True {
		word = "or"
	}
	return l.typed(&ast.BinaryNode{Operator: word, Left: t.sides[0].lower(l), Right: t.sides[1].lower(l)}, truthShape)
}

func (t *junction) value(r *run) result {
	return r.plainly(func() result { return t.judge(r).result() })
}

func (t *junction) judge(r *run) verdict {
	return decide(t.decides, []verdict{r.judge(t.sides[0]), r.judge(t.sides[1])})
}

// decide joins verdicts by `and` (decides is False) or `or` (True). What
// justifies the result are the verdicts that agree with it.
func decide(decides Truth, of []verdict) verdict {
	result := -decides
	for _, v := range of {
		if v.truth == decides || v.truth == Unknown && result != decides {
			result = v.truth
		}
	}
	return resting(result, of, func(v *verdict) bool { return v.truth == result })
}

// joined is a truth that rests on several verdicts.
func joined(truth Truth, of ...verdict) verdict {
	return resting(truth, of, func(*verdict) bool { return true })
}

// resting is a truth that rests on some of several verdicts.
func resting(truth Truth, of []verdict, counts func(*verdict) bool) verdict {
	v := verdict{truth: truth}
	v.parts = laid(of, counts, func(v *verdict) *pile[statement] { return v.parts })
	v.reads = laid(of, counts, func(v *verdict) *pile[Read] { return v.reads })
	if truth == Unknown {
		v.lacks = laid(of, counts, func(v *verdict) *pile[lack] { return v.lacks })
	}
	return v
}

// laid lays one pile of each verdict together.
func laid[T any](of []verdict, counts func(*verdict) bool, pick func(*verdict) *pile[T]) *pile[T] {
	var few [4]*pile[T]
	piles := few[:0]
	for i := range of {
		if p := pick(&of[i]); p != nil && counts(&of[i]) {
			piles = append(piles, p)
		}
	}
	return together(piles...)
}

// negation is `not`.
type negation struct {
	part
	of term
}

func (t *negation) lower(l *lowering) ast.Node {
	return l.typed(&ast.UnaryNode{Operator: "not", Node: t.of.lower(l)}, truthShape)
}

func (t *negation) value(r *run) result {
	return r.plainly(func() result { return t.judge(r).result() })
}

func (t *negation) judge(r *run) verdict {
	v := r.judge(t.of)
	return v.reversed()
}

// choice is `condition ? yes : no`.
type choice struct {
	part
	condition, yes, no term
}

func (t *choice) lower(l *lowering) ast.Node {
	return l.typed(&ast.ConditionalNode{Ternary: true, Cond: t.condition.lower(l), Exp1: t.yes.lower(l), Exp2: t.no.lower(l)}, t.kind)
}

func (t *choice) value(r *run) result {
	if t.kind.class == truthClass {
		return r.plainly(func() result { return t.judge(r).result() })
	}
	c := r.judge(t.condition)
	switch c.truth {
	case True:
		return t.yes.value(r)
	case False:
		return t.no.value(r)
	}
	return result{lacks: c.lacks}
}

// judge is settled without the condition where both branches agree.
func (t *choice) judge(r *run) verdict {
	c := r.judge(t.condition)
	switch c.truth {
	case True:
		v := r.judge(t.yes)
		return joined(v.truth, c, v)
	case False:
		v := r.judge(t.no)
		return joined(v.truth, c, v)
	}
	return undecided(c, r.judge(t.yes), r.judge(t.no))
}

func undecided(condition, yes, no verdict) verdict {
	if yes.truth == no.truth && yes.truth != Unknown {
		return joined(yes.truth, yes, no)
	}
	of := []verdict{condition}
	for _, v := range []verdict{yes, no} {
		if v.truth == Unknown {
			of = append(of, v)
		}
	}
	return joined(Unknown, of...)
}
