package design

import (
	"fmt"
	"math"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// joint is the gap up to which two ends meet: dimensions of a drawing are
// rounded.
const joint = 0.01

// spot is a point of the plan in metres.
type spot struct{ x, y float64 }

func (p Point) spot() spot { return spot{float64(p.X), float64(p.Y)} }

func (a spot) to(b spot) float64 { return math.Hypot(b.x-a.x, b.y-a.y) }

// segment is a straight piece of the plan.
type segment struct{ a, b spot }

// turn is positive where c lies left of the line from a to b, negative where it
// lies right, and zero on it but for rounding.
func turn(a, b, c spot) float64 {
	left, right := (b.x-a.x)*(c.y-a.y), (b.y-a.y)*(c.x-a.x)
	if math.Abs(left-right) <= q.Tolerance*(math.Abs(left)+math.Abs(right)) {
		return 0
	}
	return left - right
}

// meets tells whether two pieces share a point.
func (s segment) meets(o segment) bool {
	ends := [4]float64{turn(s.a, s.b, o.a), turn(s.a, s.b, o.b), turn(o.a, o.b, s.a), turn(o.a, o.b, s.b)}
	if ends[0]*ends[1] < 0 && ends[2]*ends[3] < 0 {
		return true
	}
	return ends[0] == 0 && s.spans(o.a) || ends[1] == 0 && s.spans(o.b) ||
		ends[2] == 0 && o.spans(s.a) || ends[3] == 0 && o.spans(s.b)
}

// spans tells whether a point of the line through a piece lies on the piece.
func (s segment) spans(p spot) bool {
	return min(s.a.x, s.b.x) <= p.x && p.x <= max(s.a.x, s.b.x) &&
		min(s.a.y, s.b.y) <= p.y && p.y <= max(s.a.y, s.b.y)
}

// foldsInto tells whether the next piece runs back over this one.
func (s segment) foldsInto(next segment) bool {
	along := (s.b.x-s.a.x)*(next.b.x-next.a.x) + (s.b.y-s.a.y)*(next.b.y-next.a.y)
	return along < 0 && turn(s.a, s.b, next.b) == 0
}

// ring is the sides of a closed figure, each beginning where the one before
// ends.
type ring []segment

func ringOf(points []Point) ring {
	sides := make(ring, len(points))
	for i, p := range points {
		sides[i] = segment{p.spot(), points[(i+1)%len(points)].spot()}
	}
	return sides
}

// area is positive when the ring runs counter-clockwise.
func (r ring) area() float64 {
	sum := 0.0
	for _, s := range r {
		sum += s.a.x*s.b.y - s.b.x*s.a.y
	}
	return sum / 2
}

// crossing finds two sides that meet elsewhere than at their common corner; the
// earlier one comes first.
func (r ring) crossing() (first, second int, found bool) {
	for j := range r {
		for i := range j {
			beside := i+1 == j || i == 0 && j == len(r)-1
			switch {
			case !beside && r[i].meets(r[j]):
				return i, j, true
			case i+1 == j && r[i].foldsInto(r[j]), i == 0 && j == len(r)-1 && r[j].foldsInto(r[i]):
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// at is a point of the plan for people.
func (c *checker) at(p Point) string {
	return fmt.Sprintf("(%s, %s)", c.print(p.X), c.print(p.Y))
}
