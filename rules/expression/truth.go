package expression

// Truth is a value of three-valued (Kleene) logic.
type Truth int8

// The truth values; minus is negation.
const (
	False   Truth = -1
	Unknown Truth = 0
	True    Truth = 1
)

// String gives the word for a truth.
func (t Truth) String() string {
	switch t {
	case True:
		return "true"
	case False:
		return "false"
	}
	return "unknown"
}
