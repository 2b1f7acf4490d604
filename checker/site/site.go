package site

import (
	"errors"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Site is the geometry of one design. It is safe for concurrent reading.
type Site struct{ design *design.Design }

// New prepares the geometry of a design.
func New(d *design.Design) *Site { return &Site{design: d} }

var errUnmeasured = errors.New("is not measured yet")

// Measurement is one measured distance.
type Measurement struct {
	Length q.Length               // never negative
	Stated *design.StatedDistance // the dimension that stood in for geometry; nil when computed
	Placed bool                   // From and To are known
	From   [3]float64             // nearest point of the first thing, in metres on the site
	To     [3]float64             // nearest point of the second thing
}

// Measure gives the shortest straight line between the nearest edges.
func (s *Site) Measure(a, b any) (Measurement, error) { return Measurement{}, errUnmeasured }

// Distance is the shortest straight line between the nearest edges of two things.
func (s *Site) Distance(a, b any) (q.Length, error) { return 0, errUnmeasured }

// Horizontal is the distance on the plan between the nearest edges of two things.
func (s *Site) Horizontal(a, b any) (q.Length, error) { return 0, errUnmeasured }

// Rise is the bottom edge of upper above the top edge of lower.
func (s *Site) Rise(lower, upper any) (q.Length, error) { return 0, errUnmeasured }

// Height is the bottom edge of a thing above the finished ground at its place.
func (s *Site) Height(a any) (q.Length, error) { return 0, errUnmeasured }

// Stated is the dimension of a drawing given for a pair of things, in either
// order; nil when there is none.
func (s *Site) Stated(a, b any) *design.StatedDistance { return nil }

// PointOnly tells whether a thing stands for its centre alone because its size
// is not given.
func (s *Site) PointOnly(thing any) bool { return false }
