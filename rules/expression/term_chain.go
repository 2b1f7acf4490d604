package expression

// chain is a way to a key over others, any of which may be left out.
type chain struct {
	from term // a root, which may be left out, or anything that is no key
	keys []*member
}

// chainOf takes a term apart; ok is false when it always has a value.
func chainOf(t term) (c chain, ok bool) {
	for {
		f, isField := t.(*field)
		if !isField {
			break
		}
		c.keys = append([]*member{f.member}, c.keys...)
		ok = ok || f.member.optional
		t = f.of
	}
	c.from = t
	if _, isRoot := t.(*root); isRoot && t.shape().class == thingClass {
		ok = true
	}
	return c, ok
}

// follow reads the keys in turn; ok is false when one is left out.
func (c chain) follow(thing any, note func(thing any, m *member)) (value any, ok bool) {
	value = thing
	for _, m := range c.keys {
		if isNil(value) {
			return nil, false
		}
		if note != nil {
			note(value, m)
		}
		if value, ok = m.value(value); !ok {
			return nil, false
		}
	}
	return value, !isNil(value)
}

// start evaluates where the chain begins; a root left out is nil, not unknown.
func (c chain) start(r *run) result {
	if root, ok := c.from.(*root); ok {
		return r.perform(root, root.get)
	}
	return c.from.value(r)
}

// walk follows the chain in an evaluation and notes what it reads.
func (c chain) walk(r *run) (value any, ok bool, lacks *pile[lack]) {
	start := c.start(r)
	if start.lacks != nil {
		return nil, false, start.lacks
	}
	var note func(thing any, m *member)
	if r.reads != nil {
		note = func(thing any, m *member) { r.read(refOf(thing), m.key) }
	}
	value, ok = c.follow(start.value, note)
	return value, ok, nil
}

// knownTest asks whether the design gives a key.
type knownTest struct {
	part
	chain chain
}

func (t *knownTest) value(r *run) result {
	_, ok, lacks := t.chain.walk(r)
	return unless(lacks, ok)
}

// fallback is the first of several keys that the design gives, or something else
// where it gives none.
type fallback struct {
	part
	chains []chain
	other  term
}

func (t *fallback) value(r *run) result {
	for _, c := range t.chains {
		value, ok, lacks := c.walk(r)
		switch {
		case lacks != nil:
			return result{lacks: lacks}
		case ok:
			return known(value)
		}
	}
	return t.other.value(r)
}
