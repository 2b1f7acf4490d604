package expression

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/builtin"
	machine "github.com/expr-lang/expr/compiler"
	"github.com/expr-lang/expr/conf"
	"github.com/expr-lang/expr/parser"
	"github.com/expr-lang/expr/vm"
)

// lowering turns a term into the machine's tree. All that is left there are
// constants, calls of host functions, loops, branches and names: the machine
// does no arithmetic, no comparison and no look-up of its own.
type lowering struct {
	functions conf.FunctionsTable
	names     map[*operation]string
	temps     int
}

// program compiles a term for the machine.
func program(t term) (*vm.Program, error) {
	l := &lowering{functions: conf.FunctionsTable{}, names: map[*operation]string{}}
	tree := &parser.Tree{Node: t.lower(l)}
	p, err := machine.Compile(tree, &conf.Config{Functions: l.functions, ShortCircuit: true, Optimize: true})
	if err != nil { // a recovered panic, with a stack that says nothing to a rule writer
		message, _, _ := strings.Cut(err.Error(), "\n")
		return nil, errors.New(message)
	}
	return p, nil
}

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
		nodes[i] = t.lower(l)
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
