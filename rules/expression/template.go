package expression

import "github.com/ventlint/ventlint/checker/quantity"

// Template is a compiled message with expressions in braces.
type Template struct{}

// Template compiles a message such as "{intake.id} is {distance(intake, exhaust)} away";
// {{ and }} are single braces. The error is an *Error with offsets in the message.
func (l *Language) Template(source string, n Names) (*Template, error) { return nil, &Error{} }

// Text prints the message in a unit system.
func (t *Template) Text(s *Scope, system quantity.System) string { return "" }
