package site

import "math"

// approach is where one piece comes nearest to another, and how near.
type approach struct {
	from, to vec
	gap      float64 // never negative
}

var nowhere = approach{gap: math.Inf(1)}

func (a approach) swapped() approach { return approach{a.to, a.from, a.gap} }

func nearer(a, b approach) approach {
	if b.gap < a.gap {
		return b
	}
	return a
}

// nearest is where two shapes come nearest to each other.
func nearest(a, b shape) approach {
	best := nowhere
	for _, p := range a {
		for _, other := range b {
			best = nearer(best, p.to(other))
		}
	}
	return best
}

func (s segment) to(other piece) approach { return other.toSegment(s).swapped() }
func (d disc) to(other piece) approach    { return other.toDisc(d).swapped() }
func (r region) to(other piece) approach  { return other.toRegion(r).swapped() }

func (s segment) toRegion(r region) approach { return r.toSegment(s).swapped() }
func (d disc) toRegion(r region) approach    { return r.toDisc(d).swapped() }
func (d disc) toSegment(s segment) approach  { return s.toDisc(d).swapped() }
