package expression

import "reflect"

// alter defines an operation on one value.
func alter[A, R ~float64](c *calculus, name string, f func(a float64) float64) {
	result, _, _ := shapeOf(reflect.TypeFor[R]())
	c.folds[foldKey{name, reflect.TypeFor[A]()}] = &operation{name: name, result: result, computes: true,
		call: func(args ...any) (any, error) {
			a := float64(args[0].(A))
			r := f(a)
			return R(r), settled(r, a, 0)
		}}
}

// ofList marks the name of a fold that takes a list; without it, it takes the
// values themselves.
const ofList = " of a list"

// fold defines an operation that needs at least one value.
func fold[Q ~float64](c *calculus, name string, f func(a, b float64) float64) {
	result, _, _ := shapeOf(reflect.TypeFor[Q]())
	all := func(values []Q) (any, error) {
		if len(values) == 0 {
			return nil, &Undetermined{name + " of nothing"}
		}
		r := float64(values[0])
		for _, v := range values[1:] {
			r = f(r, float64(v))
		}
		return Q(r), nil
	}
	of := reflect.TypeFor[Q]()
	c.folds[foldKey{name, of}] = &operation{name: name, result: result, computes: true,
		call: func(args ...any) (any, error) { return all(valuesOf[Q](args)) }}
	c.folds[foldKey{name + ofList, of}] = &operation{name: name, result: result, computes: true,
		call: func(args ...any) (any, error) { return all(valuesOf[Q](args[0])) }}
}

// total defines sum and mean of a list.
func total[Q ~float64](c *calculus) {
	result, _, _ := shapeOf(reflect.TypeFor[Q]())
	add := func(list any) (total float64, n float64, err error) {
		for _, v := range valuesOf[Q](list) {
			before := total
			total += float64(v)
			n++
			if err := settled(total, before, float64(v)); err != nil {
				return 0, 0, err
			}
		}
		return total, n, nil
	}
	of := reflect.TypeFor[Q]()
	c.folds[foldKey{"sum" + ofList, of}] = &operation{name: "sum", result: result, computes: true,
		call: func(args ...any) (any, error) {
			total, _, err := add(args[0])
			return Q(total), err
		}}
	c.folds[foldKey{"mean" + ofList, of}] = &operation{name: "mean", result: result, computes: true,
		call: func(args ...any) (any, error) {
			total, n, err := add(args[0])
			if n == 0 && err == nil {
				err = &Undetermined{"mean of nothing"}
			}
			return Q(total / n), err
		}}
}

// valuesOf reads a list value of quantities.
func valuesOf[Q any](list any) []Q {
	if typed, ok := list.([]Q); ok {
		return typed
	}
	mixed := list.([]any)
	values := make([]Q, len(mixed))
	for i, v := range mixed {
		values[i] = v.(Q)
	}
	return values
}
