package expression

// Condition is a compiled expression that is true, false or unknown. It is safe
// for concurrent use, each goroutine with its own Scope.
type Condition struct{}

// Condition compiles a boolean expression. The error is an *Error.
func (l *Language) Condition(source string, n Names) (*Condition, error) { return nil, &Error{} }

// Truth evaluates the condition.
func (c *Condition) Truth(s *Scope) (Truth, error) { return Unknown, nil }

// Explain evaluates the condition and says why it came out as it did.
func (c *Condition) Explain(s *Scope) (Explanation, error) { return Explanation{}, nil }
