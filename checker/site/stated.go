package site

import (
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// StatedDistance is the dimension of a drawing that stands in for the distance
// between two things; nil when there is none.
func (s *Site) StatedDistance(a, b any) *design.StatedDistance {
	return s.statedAs(a, b, statedDistance)
}

// StatedHorizontal is the one that stands in for their distance on the plan.
func (s *Site) StatedHorizontal(a, b any) *design.StatedDistance {
	return s.statedAs(a, b, statedHorizontal)
}

func (s *Site) statedAs(a, b any, of figure) *design.StatedDistance {
	first, second, err := s.pair(a, b)
	if err != nil {
		return nil
	}
	stated, _ := s.drawn.find(first, second, of)
	return stated
}

// StatedRise is the dimension of a drawing that stands in for the rise between
// two things, from the first to the second or back; nil when there is none.
func (s *Site) StatedRise(lower, upper any) *design.StatedDistance {
	first, second, err := s.pair(lower, upper)
	if err != nil {
		return nil
	}
	for _, from := range []*place{first, second} {
		if stated, _ := s.drawn.find(first, second, statedRiseFrom(from)); stated != nil {
			return stated
		}
	}
	return nil
}

// drawn is the dimensions of drawings, by the ids that they lie between.
type drawn map[pair][]*design.StatedDistance

// pair is two ids in either order.
type pair struct{ first, second string }

func pairOf(a, b string) pair { return pair{min(a, b), max(a, b)} }

func newDrawn(list []*design.StatedDistance) drawn {
	d := drawn{}
	for _, s := range list {
		if len(s.Between) == 2 {
			p := pairOf(s.Between[0], s.Between[1])
			d[p] = append(d[p], s)
		}
	}
	return d
}

// figure picks one of the figures of a stated distance; nil when it is not given.
type figure func(*design.StatedDistance) *q.Length

func statedDistance(s *design.StatedDistance) *q.Length   { return s.Distance }
func statedHorizontal(s *design.StatedDistance) *q.Length { return s.Horizontal }

// statedRiseFrom picks the rise of the other thing above this one.
func statedRiseFrom(lower *place) figure {
	return func(s *design.StatedDistance) *q.Length {
		if s.Between[0] != lower.id {
			return nil
		}
		return s.Rise
	}
}

// find gives the first stated distance of two things that has a figure.
func (d drawn) find(a, b *place, of figure) (*design.StatedDistance, q.Length) {
	if len(d) == 0 {
		return nil, 0
	}
	for _, s := range d[pairOf(a.id, b.id)] {
		if value := of(s); value != nil {
			return s, *value
		}
	}
	return nil, 0
}
