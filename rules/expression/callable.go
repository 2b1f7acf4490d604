package expression

import "reflect"

// Call is a Go function that expressions can call. Call0 to Call3 make one, each
// for the number of its arguments beside the facts.
type Call struct {
	takes []reflect.Type
	gives reflect.Type
	do    func(facts any, in []any) (any, error)
}

// Do calls the function.
func (c Call) Do(facts any, in ...any) (any, error) { return c.do(facts, in) }

// Call0 makes a call of a function that takes the facts alone.
func Call0[F, R any](f func(F) (R, error)) Call {
	return Call{nil, reflect.TypeFor[R](), func(facts any, _ []any) (any, error) {
		return given(f(facts.(F)))
	}}
}

// Call1 makes a call of a function of one argument.
func Call1[F, A, R any](f func(F, A) (R, error)) Call {
	return Call{[]reflect.Type{reflect.TypeFor[A]()}, reflect.TypeFor[R](), func(facts any, in []any) (any, error) {
		return given(f(facts.(F), fitted[A](in[0])))
	}}
}

// Call2 makes a call of a function of two arguments.
func Call2[F, A, B, R any](f func(F, A, B) (R, error)) Call {
	return Call{[]reflect.Type{reflect.TypeFor[A](), reflect.TypeFor[B]()}, reflect.TypeFor[R](), func(facts any, in []any) (any, error) {
		return given(f(facts.(F), fitted[A](in[0]), fitted[B](in[1])))
	}}
}

// Call3 makes a call of a function of three arguments.
func Call3[F, A, B, C, R any](f func(F, A, B, C) (R, error)) Call {
	return Call{[]reflect.Type{reflect.TypeFor[A](), reflect.TypeFor[B](), reflect.TypeFor[C]()}, reflect.TypeFor[R](), func(facts any, in []any) (any, error) {
		return given(f(facts.(F), fitted[A](in[0]), fitted[B](in[1]), fitted[C](in[2])))
	}}
}

// given is a result that counts where there is no error.
func given[R any](v R, err error) (any, error) {
	if err != nil {
		return nil, err
	}
	return v, nil
}

// fitted brings an argument to the type of its parameter. Most are of it; a list
// may be one of any, and a word plain text.
func fitted[A any](v any) A {
	if a, ok := v.(A); ok {
		return a
	}
	return fit(v, reflect.TypeFor[A]()).Interface().(A)
}
