package expression

// operation is something that is done with known values. It has no memory: the
// fast path and the explanation share it.
type operation struct {
	name     string
	result   shape
	scoped   bool // call takes the *Scope before the other arguments
	computes bool // an Undetermined result comes from the values, not from outside
	call     func(args ...any) (any, error)
}
