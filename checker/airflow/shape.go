package airflow

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const (
	leastSide q.Length = 0.01
	mostSide  q.Length = 5
)

var errNoShape = errors.New("duct size is not given, expected a diameter or a width and a height")

// Shape is the clear inside of a duct. Round, Rectangular and FlatOval make one;
// the zero Shape is none, and losses of it are an error.
type Shape struct {
	name          string
	width, height float64 // width is the larger
}

// Round is a circle of a diameter from 10 mm to 5 m.
func Round(diameter q.Length) (Shape, error) {
	return newShape("round", diameter, diameter)
}

// Rectangular is a rectangle with sides from 10 mm to 5 m, in any order.
func Rectangular(a, b q.Length) (Shape, error) { return newShape("rectangular", a, b) }

// FlatOval is two half circles joined by straight sides, by its axes from 10 mm
// to 5 m, in any order.
func FlatOval(a, b q.Length) (Shape, error) { return newShape("flat oval", a, b) }

func newShape(name string, a, b q.Length) (Shape, error) {
	if err := cmp.Or(checkSide(name, a), checkSide(name, b)); err != nil {
		return Shape{}, err
	}
	return Shape{name, float64(max(a, b)), float64(min(a, b))}, nil
}

func checkSide(name string, x q.Length) error {
	return bounds.Check("size of a "+name+" duct", x, leastSide, mostSide)
}

// String gives size and kind, in SI: "200 mm x 100 mm rectangular".
func (s Shape) String() string {
	width, height := q.Length(s.width), q.Length(s.height)
	switch {
	case s.none():
		return "no duct"
	case s.round():
		return fmt.Sprintf("%v round", width)
	default:
		return fmt.Sprintf("%v x %v %s", width, height, s.name)
	}
}

// Area is the cross section.
func (s Shape) Area() q.Area {
	switch {
	case s.round():
		return q.Area(math.Pi / 4 * s.width * s.width)
	case s.oval():
		return q.Area(math.Pi/4*s.height*s.height + s.height*(s.width-s.height))
	default:
		return q.Area(s.width * s.height)
	}
}

// Perimeter is the length of the wall around the cross section.
func (s Shape) Perimeter() q.Length {
	switch {
	case s.round():
		return q.Length(math.Pi * s.width)
	case s.oval():
		return q.Length(math.Pi*s.height + 2*(s.width-s.height))
	default:
		return q.Length(2 * (s.width + s.height))
	}
}

// HydraulicDiameter is 4 A/P, zero for no duct. Friction takes it with the actual
// velocity. Source: ASHRAE Fundamentals 2021, chapter 21, equation 24.
func (s Shape) HydraulicDiameter() q.Length {
	switch {
	case s.none():
		return 0
	case s.round():
		return q.Length(s.width)
	default:
		return 4 * q.Length(s.Area()) / s.Perimeter()
	}
}

// EqualFriction is the round duct that loses as much at the same flow and length:
// 1.30 (a b)^0.625/(a + b)^0.25 of a rectangle, after Huebscher, and 1.55
// A^0.625/P^0.25 of a flat oval. It serves to compare sizes; losses here are worked
// out with the hydraulic diameter. Source: ASHRAE Fundamentals 2021, chapter 21,
// equations 25 to 28.
func (s Shape) EqualFriction() q.Length {
	switch {
	case s.none():
		return 0
	case s.round():
		return q.Length(s.width)
	case s.oval():
		return q.Length(1.55 * math.Pow(float64(s.Area()), 0.625) / math.Pow(float64(s.Perimeter()), 0.25))
	default:
		return q.Length(1.30 * math.Pow(s.width*s.height, 0.625) / math.Pow(s.width+s.height, 0.25))
	}
}

func (s Shape) given() error {
	if s.none() {
		return errNoShape
	}
	return nil
}

func (s Shape) none() bool  { return s.name == "" }
func (s Shape) round() bool { return s.name == "round" }
func (s Shape) oval() bool  { return s.name == "flat oval" }
