package expression

import "github.com/expr-lang/expr/ast"

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

// given asks whether the chain leads to a value, from where it starts.
func (c chain) given() *operation {
	return &operation{name: "known", result: truthShape, call: func(args ...any) (any, error) {
		_, ok := c.follow(args[0], nil)
		return ok, nil
	}}
}

// read gives the value that the chain leads to.
func (c chain) read(kind shape) *operation {
	return &operation{name: "read", result: kind, call: func(args ...any) (any, error) {
		v, _ := c.follow(args[0], nil)
		return v, nil
	}}
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

func (t *knownTest) lower(l *lowering) ast.Node { return l.call(t.chain.given(), t.chain.lower(l)) }

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

func (t *fallback) lower(l *lowering) ast.Node {
	node := t.other.lower(l)
	for i := len(t.chains) - 1; i >= 0; i-- {
		node = l.first(t.chains[i], t.kind, node)
	}
	return node
}

// first reads the start of a chain once, under a name that no pack can use.
func (l *lowering) first(c chain, kind shape, other ast.Node) ast.Node {
	name := l.temporary()
	start := func() ast.Node { return &ast.IdentifierNode{Value: name} }
	choice := &ast.ConditionalNode{Ternary: true, Cond: l.call(c.given(), start()), Exp1: l.call(c.read(kind), start()), Exp2: other}
	return l.typed(&ast.VariableDeclaratorNode{Name: name, Value: c.lower(l), Expr: choice}, kind)
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
