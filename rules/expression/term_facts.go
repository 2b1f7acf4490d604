package expression

import "github.com/expr-lang/expr/ast"

// root is a part of the facts. Its pointer may be nil: a part left out.
type root struct {
	part
	get, need *operation // get may give nil; need makes that an error
}

func (t *root) lower(l *lowering) ast.Node { return l.call(t.need) }
func (t *root) value(r *run) result        { return r.perform(t, t.need) }

// field is a key of a thing.
type field struct {
	part
	of     term
	member *member
	read   *operation
}

func (t *field) lower(l *lowering) ast.Node { return l.call(t.read, t.of.lower(l)) }

func (t *field) value(r *run) result {
	of := t.of.value(r)
	if of.lacks != nil {
		return of
	}
	r.read(t.member.owner.refOf(of.value), t.member.key)
	v := r.perform(t, t.read, of.value)
	if v.lacks != nil && r.label != nil {
		v.lacks.items[0].missing.Thing = r.label(of.value)
	}
	return v
}

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

func (c chain) lower(l *lowering) ast.Node {
	if root, ok := c.from.(*root); ok {
		return l.call(root.get)
	}
	return c.from.lower(l)
}

// walk follows the chain in an evaluation and notes what it reads.
func (c chain) walk(r *run) (value any, ok bool, lacks *pile[lack]) {
	start := c.start(r)
	if start.lacks != nil {
		return nil, false, start.lacks
	}
	value, ok = c.follow(start.value, func(thing any, m *member) { r.read(m.owner.refOf(thing), m.key) })
	return value, ok, nil
}

// knownTest asks whether the design gives a key.
type knownTest struct {
	part
	chain chain
}

func (t *knownTest) lower(l *lowering) ast.Node {
	return l.call(&operation{name: "known", result: truthShape, call: func(args ...any) (any, error) {
		_, ok := t.chain.follow(args[0], nil)
		return ok, nil
	}}, t.chain.lower(l))
}

func (t *knownTest) value(r *run) result {
	_, ok, lacks := t.chain.walk(r)
	return result{ok, lacks}
}

// fallback is a key, or something else where the design does not give it.
type fallback struct {
	part
	chain chain
	other term
}

// lower reads the start of the chain once, under a name that no pack can use.
func (t *fallback) lower(l *lowering) ast.Node {
	name := l.temporary()
	start := func() ast.Node { return &ast.IdentifierNode{Value: name} }
	given := &operation{name: "known", result: truthShape, call: func(args ...any) (any, error) {
		_, ok := t.chain.follow(args[0], nil)
		return ok, nil
	}}
	read := &operation{name: "read", result: t.kind, call: func(args ...any) (any, error) {
		v, _ := t.chain.follow(args[0], nil)
		return v, nil
	}}
	choice := &ast.ConditionalNode{Ternary: true, Cond: l.call(given, start()), Exp1: l.call(read, start()), Exp2: t.other.lower(l)}
	return l.typed(&ast.VariableDeclaratorNode{Name: name, Value: t.chain.lower(l), Expr: choice}, t.kind)
}

func (t *fallback) value(r *run) result {
	value, ok, lacks := t.chain.walk(r)
	switch {
	case lacks != nil:
		return result{lacks: lacks}
	case ok:
		return known(value)
	}
	return t.other.value(r)
}
