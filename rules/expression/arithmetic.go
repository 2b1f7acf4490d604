package expression

import (
	"math"
	"reflect"

	"github.com/ventlint/ventlint/checker/quantity"
)

// operatorKey is a binary operator between two Go types.
type operatorKey struct {
	symbol      string
	left, right reflect.Type
}

// foldKey is an operation on one value, or on values of one Go type.
type foldKey struct {
	name string
	of   reflect.Type
}

// calculus is what can be done with numbers and quantities. What is not in it
// does not compile.
type calculus struct {
	binary map[operatorKey]*operation
	folds  map[foldKey]*operation
}

// define gives a meaning to an operator between two types.
func define[A, B, R ~float64](c *calculus, symbol string, f func(a, b float64) float64) {
	left, right := reflect.TypeFor[A](), reflect.TypeFor[B]()
	result, _, _ := shapeOf(reflect.TypeFor[R]())
	c.binary[operatorKey{symbol, left, right}] = &operation{name: symbol, result: result, computes: true,
		call: func(args ...any) (any, error) {
			a, b := float64(args[0].(A)), float64(args[1].(B))
			if symbol == "/" && b == 0 {
				return nil, &Undetermined{"division by zero"}
			}
			r := f(a, b)
			return R(r), settled(r, a, b)
		}}
}

// settled refuses results that mean nothing. An infinite operand stands for "no
// limit" or "not permitted" and may stay what it is, but not turn into another value.
func settled(r, a, b float64) error {
	switch {
	case math.IsNaN(a) || math.IsNaN(b):
		return &Undetermined{"a value is not a number"}
	case !math.IsInf(a, 0) && !math.IsInf(b, 0):
		if math.IsInf(r, 0) || math.IsNaN(r) {
			return &Undetermined{"the result is too large"}
		}
	case !math.IsInf(r, 0) || r != a && r != b:
		return &Undetermined{"no result with a value that is without limit or not permitted"}
	}
	return nil
}

func plus(a, b float64) float64  { return a + b }
func minus(a, b float64) float64 { return a - b }
func times(a, b float64) float64 { return a * b }
func over(a, b float64) float64  { return a / b }

// compare orders two values: equal within the tolerance of all comparisons,
// infinities included.
func compare(a, b float64) (int, error) {
	switch {
	case math.IsNaN(a) || math.IsNaN(b):
		return 0, &Undetermined{"a value is not a number"}
	case a == b:
		return 0, nil
	case math.IsInf(a, 0) || math.IsInf(b, 0):
		if a < b {
			return -1, nil
		}
		return 1, nil
	}
	return quantity.Compare(a, b), nil
}

// comparisons are the operators that compare() decides.
var comparisons = map[string]func(order int) bool{
	"<":  func(order int) bool { return order < 0 },
	"<=": func(order int) bool { return order <= 0 },
	">":  func(order int) bool { return order > 0 },
	">=": func(order int) bool { return order >= 0 },
	"==": func(order int) bool { return order == 0 },
	"!=": func(order int) bool { return order != 0 },
}

// compares lets values of two types be compared.
func compares[A, B ~float64](c *calculus) {
	for symbol, holds := range comparisons {
		c.binary[operatorKey{symbol, reflect.TypeFor[A](), reflect.TypeFor[B]()}] = &operation{
			name: symbol, result: truthShape, computes: true,
			call: func(args ...any) (any, error) {
				order, err := compare(float64(args[0].(A)), float64(args[1].(B)))
				return holds(order), err
			}}
	}
}

// infinite tells whether a number or quantity stands for "no limit" or "not
// permitted".
func infinite(v any) bool {
	rv := reflect.ValueOf(v)
	return rv.CanFloat() && math.IsInf(rv.Float(), 0)
}
