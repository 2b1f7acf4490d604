// Package bounds refuses inputs of calculations that lie outside the range in
// which their equations hold.
package bounds

import (
	"fmt"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Error is an input outside its range. Value, Low and High are of the input's
// own quantity type.
type Error struct {
	What             string // the input, as people call it: "indoor temperature"
	Value, Low, High any
}

// Error names the input, its value and the range, in SI.
func (e *Error) Error() string {
	return fmt.Sprintf("%s %q is out of range, expected %s to %s", e.What, text(e.Value), text(e.Low), text(e.High))
}

// Check gives an *Error when the value is below low, above high, or no number.
// Both ends are allowed, up to the tolerance of quantity.Compare.
func Check[T ~float64](what string, value, low, high T) error {
	if q.Compare(float64(value), float64(low)) < 0 || q.Compare(float64(value), float64(high)) > 0 {
		return &Error{what, value, low, high}
	}
	return nil
}

// Clamp moves a value that Check lets pass by its tolerance onto the range.
func Clamp[T ~float64](value, low, high T) T { return min(max(value, low), high) }

func text(v any) string {
	if s, ok := v.(fmt.Stringer); ok {
		return s.String()
	}
	return q.Format(v, q.SI)
}
