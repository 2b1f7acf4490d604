package expression

// junction is `and` or `or`.
type junction struct {
	part
	decides Truth // the truth that one side settles: False for and, True for or
	sides   [2]term
}

func (t *junction) value(r *run) result {
	return r.plainly(func() result { return t.judge(r).result() })
}

func (t *junction) judge(r *run) verdict {
	left := r.judge(t.sides[0])
	if left.truth == t.decides && r.plain() {
		return left
	}
	right := r.judge(t.sides[1])
	if r.plain() {
		return settle(t.decides, left, right)
	}
	return decide(t.decides, []verdict{left, right})
}

// settle joins two verdicts that nobody asks the reasons of, the first of which
// decides nothing: what is unknown stays so unless the second decides.
func settle(decides Truth, first, second verdict) verdict {
	switch {
	case second.truth == decides || first.truth != Unknown:
		return second
	case second.truth != Unknown:
		return first
	}
	return verdict{truth: Unknown, lacks: together(first.lacks, second.lacks)}
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
