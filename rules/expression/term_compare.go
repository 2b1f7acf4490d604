package expression

import (
	"strings"
)

// comparison is an operator between two values whose result is true or false.
type comparison struct {
	part
	symbol      string
	sign        span // where the symbol stands
	left, right term
	operation   *operation
}

// sized tells whether the comparison is of figures by size.
func (t *comparison) sized() bool {
	return (t.symbol[0] == '<' || t.symbol[0] == '>') && t.left.shape().ordered() && t.right.shape().ordered()
}

func (t *comparison) value(r *run) result { return t.judge(r).result() }

func (t *comparison) judge(r *run) verdict {
	if r.plain() {
		_, _, outcome := t.sides(r)
		return verdict{truth: outcome.truth(), lacks: outcome.lacks}
	}
	var left, right, outcome result
	reads := r.apart(func() {
		outcome = r.plainly(func() result {
			left, right, outcome = t.sides(r)
			return outcome
		})
	})
	truth := outcome.truth()
	parts := r.state(statement{term: t, symbol: t.symbol, truth: truth, left: left.value, right: right.value, lacks: outcome.lacks, reads: reads})
	return verdict{truth: truth, parts: parts, lacks: outcome.lacks}
}

// sides evaluates and compares both sides.
func (t *comparison) sides(r *run) (left, right, outcome result) {
	left, right = t.left.value(r), t.right.value(r)
	if lacks := together(left.lacks, right.lacks); lacks != nil {
		return left, right, result{lacks: lacks}
	}
	return left, right, r.perform(t, t.operation, left.value, right.value)
}

// opposites are the operators that hold exactly where the others do not.
var opposites = map[string]string{"<": ">=", ">=": "<", ">": "<=", "<=": ">", "==": "!=", "!=": "==",
	"in": "not in", "contains": "does not contain", "startsWith": "does not start with", "endsWith": "does not end with"}

// textTests are the operators between two texts.
var textTests = map[string]func(text, part string) bool{
	"contains": strings.Contains, "startsWith": strings.HasPrefix, "endsWith": strings.HasSuffix,
}

// equality gives the test of == for values of one shape.
func equality(s shape) func(a, b any) (bool, error) {
	if s.class != quantityClass && s.class != numberClass {
		return func(a, b any) (bool, error) { return a == b, nil }
	}
	equal := theCalculus().binary[operatorKey{"==", s.goType, s.goType}]
	return func(a, b any) (bool, error) {
		v, err := equal.call(a, b)
		return err == nil && v.(bool), err
	}
}

// The operations == and != between values of one shape that have no order.
var (
	equals  = &operation{name: "==", result: truthShape, call: func(args ...any) (any, error) { return args[0] == args[1], nil }}
	differs = &operation{name: "!=", result: truthShape, call: func(args ...any) (any, error) { return args[0] != args[1], nil }}
)

// membership makes the operation of `in`.
func membership(elem shape) *operation {
	test := equality(elem)
	return &operation{name: "in", result: truthShape, scoped: true, computes: true, call: func(args ...any) (any, error) {
		list := args[2]
		n := length(list)
		if err := args[0].(*Scope).spend(n); err != nil {
			return nil, err
		}
		for i := range n {
			if same, err := test(args[1], element(list, i)); same || err != nil {
				return same, err
			}
		}
		return false, nil
	}}
}
