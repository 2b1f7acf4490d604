package expression

// Error is a mistake in an expression, found when it is compiled.
type Error struct {
	Offset  int    // first wrong character, in runes from the start of the source
	Length  int    // how many runes are wrong; at least 1
	Message string // lower case, no full stop: what was found, then what was expected
	Hint    string // what to write instead; may be empty
}

// Error gives the message alone: the caller knows the file and the line.
func (e *Error) Error() string { return e.Message }

// Undetermined is the error of a value that the design gives but no rule can
// decide: a person must judge. Functions and tables return it too.
type Undetermined struct {
	Reason string // lower case, no full stop
}

// Error gives the reason.
func (e *Undetermined) Error() string { return e.Reason }
