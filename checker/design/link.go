package design

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/document"
)

// Link is a reference to another thing of the design by its id.
type Link[T any] struct {
	ID string
	To *T // set when the design is loaded
}

// UnmarshalTOML takes the id.
func (l *Link[T]) UnmarshalTOML(value any) error {
	id, ok := value.(string)
	if !ok {
		return fmt.Errorf("found %s, expected the id of another thing in quotes", document.Shown(value))
	}
	l.ID = id
	return nil
}

// Target is the thing that the link leads to; nil until the design is loaded.
func (l *Link[T]) Target() *T {
	if l == nil {
		return nil
	}
	return l.To
}

// Thing is Target for who does not know its type.
func (l *Link[T]) Thing() any { return l.Target() }

// UnmarshalTOML reads two lengths: ["3 ft", "0 ft"].
func (p *Point) UnmarshalTOML(value any) error {
	pair, ok := value.([]any)
	if !ok || len(pair) != 2 {
		return fmt.Errorf(`found %s, expected a point such as ["3 ft", "0 ft"]`, document.Shown(value))
	}
	if err := p.X.UnmarshalTOML(pair[0]); err != nil {
		return &document.ElementError{Index: 0, Err: err}
	}
	if err := p.Y.UnmarshalTOML(pair[1]); err != nil {
		return &document.ElementError{Index: 1, Err: err}
	}
	return nil
}
