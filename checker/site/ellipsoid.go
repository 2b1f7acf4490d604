package site

import "math"

// Bounds of the search: how near to the least value it stops, in metres, and how
// many steps it takes at most. Strings need some hundred.
const (
	fine      = 1e-9
	mostSteps = 6000
)

// domain is what the unknowns of a search may be: intervals from -1 to 1, and
// discs of radius 1 that take two unknowns each.
type domain []int

const (
	interval = 1
	unitDisc = 2
)

func (d domain) size() int {
	n := 0
	for _, block := range d {
		n += block
	}
	return n
}

// cut gives the way out of the domain at a point, of length 1, and how far out
// the point lies; 0 inside.
func (d domain) cut(x, way []float64) float64 {
	clear(way)
	i := 0
	for _, block := range d {
		far := math.Abs(x[i])
		if block == unitDisc {
			far = math.Hypot(x[i], x[i+1])
		}
		if far > 1 {
			for k := i; k < i+block; k++ {
				way[k] = x[k] / far
			}
			return far - 1
		}
		i += block
	}
	return 0
}

// ellipsoid holds the place where a convex function is least, as long as a cut
// leaves that place in. It is a unit ball, turned and stretched: keeping the
// stretch, not its square, keeps the digits of a flat one.
type ellipsoid struct {
	centre  []float64
	stretch [][]float64
	slope   []float64 // as the unit ball sees it
}

func newEllipsoid(n int) *ellipsoid {
	e := &ellipsoid{make([]float64, n), make([][]float64, n), make([]float64, n)}
	for i := range n {
		e.stretch[i] = make([]float64, n)
		e.stretch[i][i] = math.Sqrt(float64(n))
	}
	return e
}

// reach is how far the ellipsoid goes from its centre along a slope, times the
// length of that slope. It prepares a cut along it.
func (e *ellipsoid) reach(slope []float64) float64 {
	square := 0.0
	for k := range e.slope {
		e.slope[k] = 0
		for i, s := range slope {
			e.slope[k] += e.stretch[i][k] * s
		}
		square += e.slope[k] * e.slope[k]
	}
	return math.Sqrt(square)
}

// cut shrinks the ellipsoid to the least one around its part that lies at least
// so deep, as a share of its reach, against the slope that reach has prepared.
func (e *ellipsoid) cut(reach, depth float64) {
	n := float64(len(e.centre))
	move := (1 + n*depth) / (n + 1)
	grow := n * math.Sqrt((1-depth*depth)/(n*n-1))
	flatten := 1 - math.Sqrt((n-1)*(1-depth)/((n+1)*(1+depth)))
	for i, row := range e.stretch {
		step := 0.0
		for k, s := range e.slope {
			step += row[k] * s / reach
		}
		e.centre[i] -= move * step
		for k, s := range e.slope {
			row[k] = grow * (row[k] - flatten*step*s/reach)
		}
	}
}

// minimise finds where a convex function is least over a domain, by the method
// of ellipsoids with deep cuts. f gives its value and writes a slope, that is,
// a subgradient. At each step the slope bounds from below what is left to find:
// the search stops when that is no more than fine, or when nothing less than
// a known value is left.
func minimise(d domain, f func(x, slope []float64) float64, known float64) (best []float64, least float64) {
	n := d.size()
	least = math.Inf(1)
	e, slope := newEllipsoid(max(n, 2)), make([]float64, max(n, 2)) // one unknown: another that counts for nothing
	for range mostSteps {
		depth := d.cut(e.centre, slope)
		inside := depth == 0
		if inside {
			value := f(e.centre, slope)
			if value < least {
				best, least = append(best[:0], e.centre[:n]...), value
			}
			depth = value - min(least, known)
		}
		reach := e.reach(slope)
		if reach <= depth || inside && reach-depth <= fine {
			break
		}
		e.cut(reach, depth/reach)
	}
	return best, least
}
