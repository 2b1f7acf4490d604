package expression

// root is a part of the facts. Its pointer may be nil: a part left out.
type root struct {
	part
	get, need *operation // get may give nil; need makes that an error
}

func (t *root) value(r *run) result { return r.perform(t, t.need) }

// subject is one that a rule is asked of.
type subject struct {
	part
	index int
}

func (t *subject) value(r *run) result { return known(r.scope.Subjects[t.index]) }

// field is a key of a thing.
type field struct {
	part
	of     term
	member *member
}

func (t *field) value(r *run) result {
	of := t.of.value(r)
	if of.lacks != nil {
		return of
	}
	if r.reads != nil {
		r.read(refOf(of.value), t.member.key)
	}
	content, err := t.member.read(of.value)
	if err == nil {
		return known(content)
	}
	v := r.lacking(t, false, err)
	if v.lacks != nil && r.label != nil {
		v.lacks.items[0].missing.Thing = r.label(of.value)
	}
	return v
}
