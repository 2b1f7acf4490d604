package expression

import (
	"fmt"
	"reflect"
	"testing"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/builtin"
	machine "github.com/expr-lang/expr/compiler"
	"github.com/expr-lang/expr/conf"
	"github.com/expr-lang/expr/parser"
	"github.com/expr-lang/expr/vm"
	"github.com/stretchr/testify/require"
)

// lowering turns a term into the machine's tree. All that is left there are
// constants, calls of host functions, loops, branches and names: the machine
// does no arithmetic, no comparison and no look-up of its own.
type lowering struct {
	functions conf.FunctionsTable
	names     map[*operation]string
	temps     int
}

// byMachine evaluates a term on the machine, as an evaluation of its own.
func byMachine(t testing.TB, c *compiled, s *Scope) (any, error) {
	t.Helper()
	l := &lowering{functions: conf.FunctionsTable{}, names: map[*operation]string{}}
	program, err := machine.Compile(&parser.Tree{Node: l.node(c.root)}, &conf.Config{Functions: l.functions, ShortCircuit: true, Optimize: true})
	require.NoError(t, err)
	_, err = s.begin(c)
	require.NoError(t, err)
	return (&vm.VM{MemoryBudget: 100_000}).Run(program, s)
}

// lowered is a term that the machine can do.
type lowered interface{ lower(l *lowering) ast.Node }

func (l *lowering) node(t term) ast.Node { return t.(lowered).lower(l) }

// call makes a call of an operation.
func (l *lowering) call(op *operation, arguments ...ast.Node) ast.Node {
	if op.scoped {
		arguments = append([]ast.Node{&ast.IdentifierNode{Value: "$env"}}, arguments...)
	}
	node := &ast.CallNode{Callee: &ast.IdentifierNode{Value: l.name(op)}, Arguments: arguments}
	return l.typed(node, op.result)
}

// name registers an operation under a name of its own.
func (l *lowering) name(op *operation) string {
	if name, ok := l.names[op]; ok {
		return name
	}
	name := fmt.Sprintf("%d %s", len(l.names), op.name)
	l.names[op] = name
	l.functions[name] = &builtin.Function{Name: name, Func: op.call}
	return name
}

func (l *lowering) all(terms []term) []ast.Node {
	nodes := make([]ast.Node, len(terms))
	for i, t := range terms {
		nodes[i] = l.node(t)
	}
	return nodes
}

var listType = reflect.TypeFor[[]any]()

// typed tells the machine a type, so that it does not look for pointers to follow.
func (l *lowering) typed(node ast.Node, s shape) ast.Node {
	switch s.class {
	case listClass:
		node.SetType(listType)
	case unsetClass:
		node.SetType(truthShape.goType)
	default:
		node.SetType(s.goType)
	}
	return node
}

// temporary gives a name that no expression can write.
func (l *lowering) temporary() string {
	l.temps++
	return fmt.Sprintf("temporary %d", l.temps)
}

// step makes the body of a loop pay for each element: loops are all that can
// take long.
func (l *lowering) step(body ast.Node) ast.Node {
	sequence := &ast.SequenceNode{Nodes: []ast.Node{l.call(stepOperation), body}}
	sequence.SetNature(*body.Nature())
	return &ast.PredicateNode{Node: sequence}
}

var stepOperation = &operation{name: "step", result: truthShape, scoped: true, call: func(args ...any) (any, error) {
	return true, args[0].(*Scope).spend(1)
}}

func (t *literal) lower(*lowering) ast.Node { return &ast.ConstantNode{Value: t.content} }

func (t *limit) lower(l *lowering) ast.Node {
	if t.content == nil {
		return l.call(t.unset)
	}
	return &ast.ConstantNode{Value: t.content}
}

func (t *application) lower(l *lowering) ast.Node { return l.call(t.operation, l.all(t.arguments)...) }

func (t *array) lower(l *lowering) ast.Node {
	if t.fixed != nil {
		return &ast.ConstantNode{Value: t.fixed}
	}
	return &ast.ArrayNode{Nodes: l.all(t.elements)}
}

func (c chain) lower(l *lowering) ast.Node {
	if root, ok := c.from.(*root); ok {
		return l.call(root.get)
	}
	return l.node(c.from)
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

func (t *knownTest) lower(l *lowering) ast.Node { return l.call(t.chain.given(), t.chain.lower(l)) }

func (t *fallback) lower(l *lowering) ast.Node {
	node := l.node(t.other)
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

func (t *comparison) lower(l *lowering) ast.Node {
	return l.call(t.operation, l.node(t.left), l.node(t.right))
}

func (t *root) lower(l *lowering) ast.Node { return l.call(t.need) }

func (t *field) lower(l *lowering) ast.Node {
	return l.call(&operation{name: t.member.key, result: t.member.shape, call: func(args ...any) (any, error) { return t.member.read(args[0]) }}, l.node(t.of))
}

func (t *subject) lower(l *lowering) ast.Node {
	return l.call(&operation{name: "subject", result: t.kind, scoped: true, call: func(args ...any) (any, error) { return args[0].(*Scope).Subjects[t.index], nil }})
}

func (t *binding) lower(l *lowering) ast.Node {
	return l.typed(&ast.VariableDeclaratorNode{Name: t.name, Value: l.node(t.definition), Expr: l.node(t.body)}, t.kind)
}

func (t *variable) lower(*lowering) ast.Node { return &ast.IdentifierNode{Value: t.binding.name} }

func (t *junction) lower(l *lowering) ast.Node {
	word := "and"
	if t.decides == True {
		word = "or"
	}
	return l.typed(&ast.BinaryNode{Operator: word, Left: l.node(t.sides[0]), Right: l.node(t.sides[1])}, truthShape)
}

func (t *negation) lower(l *lowering) ast.Node {
	return l.typed(&ast.UnaryNode{Operator: "not", Node: l.node(t.of)}, truthShape)
}

func (t *choice) lower(l *lowering) ast.Node {
	return l.typed(&ast.ConditionalNode{Ternary: true, Cond: l.node(t.condition), Exp1: l.node(t.yes), Exp2: l.node(t.no)}, t.kind)
}

func (t *elementTerm) lower(*lowering) ast.Node { return &ast.PointerNode{} }

func (t *loop) lower(l *lowering) ast.Node {
	node := l.typed(&ast.BuiltinNode{Name: t.name, Arguments: []ast.Node{l.node(t.list), l.step(l.node(t.body))}}, t.kind)
	if t.name == "count" {
		return l.call(toNumber, node)
	}
	return node
}

// toNumber brings the machine's count to the only kind of number there is.
var toNumber = &operation{name: "number", result: numberShape, call: func(args ...any) (any, error) {
	return float64(args[0].(int)), nil
}}
