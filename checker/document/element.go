package document

// ElementError is an error of an UnmarshalTOML method about one element of an
// array, so that the decoder can point at that element.
type ElementError struct {
	Index int // from 0
	Err   error
}

// Error gives the text of the error.
func (e *ElementError) Error() string { return e.Err.Error() }

// Unwrap gives the error.
func (e *ElementError) Unwrap() error { return e.Err }
