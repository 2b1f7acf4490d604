package airflow

import "math"

const (
	mostRootSteps = 200
	rootPrecision = 1e-13 // of the root
)

// spot is a place and the value of a function there.
type spot struct{ x, y float64 }

// root finds where a function that never falls crosses zero between two spots; where
// it does not, the nearer of them. Each step looks at a place between the last spot and
// the nearest one on the other side of zero: by the chord at first, then by three spots.
func root(f func(float64) float64, low, high spot) (x float64, steps int) {
	switch {
	case low.y >= 0:
		return low.x, 0
	case high.y <= 0:
		return high.x, 0
	}
	last, across := low, high
	share := last.y / (last.y - across.y)
	for steps = 1; ; steps++ {
		before := last
		last.x += share * (across.x - last.x)
		if last.y = f(last.x); last.y == 0 {
			break
		}
		if (last.y < 0) != (before.y < 0) {
			before, across = across, before
		}
		margin := rootPrecision / 2 * max(math.Abs(last.x), math.Abs(across.x)) / math.Abs(across.x-last.x)
		if margin > 0.5 || steps == mostRootSteps {
			break
		}
		share = min(max(ahead(last, across, before), margin), 1-margin)
	}
	return last.x, steps
}

// ahead is the share of the way from a to b, with zero in between, at which to look
// next: where the parabola of x over y through three spots crosses zero, or the middle
// where that is not to be trusted. Source: T. R. Chandrupatla, A new hybrid
// quadratic/bisection algorithm, Advances in Engineering Software 28, 1997, from memory.
func ahead(a, b, c spot) float64 {
	along, up := (a.x-b.x)/(c.x-b.x), (a.y-b.y)/(c.y-b.y)
	if !(up*up < along && (1-up)*(1-up) < 1-along) {
		return 0.5
	}
	return a.y/(b.y-a.y)*c.y/(b.y-c.y) + (c.x-a.x)/(b.x-a.x)*a.y/(c.y-a.y)*b.y/(c.y-b.y)
}
