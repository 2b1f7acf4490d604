package expression

// binding is `let name = definition; body`.
type binding struct {
	part
	name       string
	slot       int
	depth      int // how many loops are around it
	definition term
	body       term
}

// named is the value of a name, evaluated when it is first asked for: a name
// that nobody uses makes nothing unknown.
type named struct {
	value    *result
	verdicts [2]*verdict // without and with its comparisons
	reads    *pile[Read]
}

func (t *binding) value(r *run) result {
	r.define(t)
	return t.body.value(r)
}

func (t *binding) judge(r *run) verdict {
	r.define(t)
	return r.judge(t.body)
}

func (r *run) define(t *binding) {
	for len(r.named) <= t.slot {
		r.named = append(r.named, nil)
	}
	r.named[t.slot] = &named{}
}

// variable is a use of such a name.
type variable struct {
	part
	binding *binding
}

func (t *variable) value(r *run) result {
	if t.kind.class == truthClass {
		return r.plainly(func() result { return t.judge(r).result() })
	}
	n := r.named[t.binding.slot]
	if n.value != nil {
		r.readAgain(n.reads)
		return *n.value
	}
	var v result
	n.reads = r.outside(t.binding, func() { v = t.binding.definition.value(r) })
	n.value = &v
	return v
}

func (t *variable) judge(r *run) verdict {
	n := r.named[t.binding.slot]
	known := &n.verdicts[0]
	if r.explaining {
		known = &n.verdicts[1]
	}
	if *known != nil {
		r.readAgain(n.reads)
		return **known
	}
	var v verdict
	n.reads = r.outside(t.binding, func() { v = r.judge(t.binding.definition) })
	*known = &v
	return v
}

// outside evaluates where a name was defined, not in the loops of its use.
func (r *run) outside(t *binding, f func()) *pile[Read] {
	inside := r.elements
	r.elements = append([]any(nil), inside[:t.depth]...)
	reads := r.apart(f)
	r.elements = inside
	return reads
}
