package expression

import (
	"slices"
)

// term is a part of an expression whose names and types are settled. Tests lower
// terms to the tree of the machine of expr too, which must agree with them.
type term interface {
	shape() shape
	span() span
	value(r *run) result
}

// judged is a term that is true or false because of others.
type judged interface {
	term
	judge(r *run) verdict
}

// part is what all terms have.
type part struct {
	at   span
	kind shape
}

func (p part) span() span   { return p.at }
func (p part) shape() shape { return p.kind }

// judge gives the verdict of any condition; one that rests on no others is a
// comparison by itself.
func (r *run) judge(t term) verdict {
	if j, ok := t.(judged); ok {
		return j.judge(r)
	}
	if r.plain() {
		v := t.value(r)
		return verdict{truth: v.truth(), lacks: v.lacks}
	}
	return r.whole(t, func() result { return t.value(r) })
}

// whole gives the verdict of a condition that is not taken apart.
func (r *run) whole(t term, f func() result) verdict {
	var v result
	reads := r.apart(func() { v = r.plainly(f) })
	truth := v.truth()
	return verdict{truth: truth, parts: r.state(statement{term: t, truth: truth, left: v.value, lacks: v.lacks, reads: reads}), lacks: v.lacks}
}

// truth is that of a result that is true or false.
func (v result) truth() Truth {
	if v.lacks != nil {
		return Unknown
	}
	return truthOf(v.value.(bool))
}

func truthOf(b bool) Truth {
	if b {
		return True
	}
	return False
}

// literal is a value that stands in the text.
type literal struct {
	part
	content any
}

func (t *literal) value(*run) result { return known(t.content) }

// limit is a named figure of the pack.
type limit struct {
	part
	content any // nil when not set
	unset   *operation
}

func (t *limit) value(r *run) result {
	if t.content == nil {
		return r.perform(t, t.unset)
	}
	return known(t.content)
}

// constant tells whether a number was written out, here or in the pack.
func constant(t term) bool {
	switch t := t.(type) {
	case *literal, *limit:
		return true
	case *application:
		return t.operation.name == "-" && len(t.arguments) == 1 && constant(t.arguments[0])
	}
	return false
}

// application is an operation on other terms, all of which it needs.
type application struct {
	part
	operation *operation
	arguments []term
	function  *function // of the vocabulary; nil for all else
}

func (t *application) value(r *run) result {
	from := r.frame(t.operation)
	lacks := r.all(t.arguments)
	if lacks != nil {
		r.stack = r.stack[:from]
		return result{lacks: lacks}
	}
	if t.function != nil && r.reads != nil {
		r.readBy(t.function, r.stack[len(r.stack)-len(t.arguments):])
	}
	return r.done(t, t.operation, from)
}

// readBy notes what a function of the vocabulary reads.
func (r *run) readBy(f *function, arguments []any) {
	for _, v := range arguments {
		if ref, ok := placeOf(v); ok {
			r.read(ref, "")
		}
	}
	if f.reads != nil {
		r.reads.items = append(r.reads.items, f.reads(r.scope.facts, arguments)...)
	}
}

// array is a list that is written out.
type array struct {
	part
	elements []term
	fixed    any // the list of their values, where all are written out
}

func (t *array) value(r *run) result {
	if t.fixed != nil {
		return known(t.fixed)
	}
	from := len(r.stack)
	lacks := r.all(t.elements)
	values := slices.Clone(r.stack[from:])
	r.stack = r.stack[:from]
	return unless(lacks, values)
}

// newArray makes a list of elements. Literals are made a list once.
func newArray(p part, elements []term) *array {
	t := &array{part: p, elements: elements}
	fixed := make([]any, len(elements))
	for i, e := range elements {
		l, ok := e.(*literal)
		if !ok {
			return t
		}
		fixed[i] = l.content
	}
	t.fixed = fixed
	return t
}
