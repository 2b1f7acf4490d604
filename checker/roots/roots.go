// Package roots finds where functions cross zero.
package roots

import "math"

// Spot is a place and the value of a function there.
type Spot struct{ X, Y float64 }

// At is the spot of a function at a place.
func At(f func(float64) float64, x float64) Spot { return Spot{x, f(x)} }

// Finest is the precision beyond which rounding decides.
const Finest = 4e-16

const mostSteps = 200

// Find gives where a function that never falls crosses zero between two of its spots,
// to a precision that is a share of the place, and how often it looked; where the
// function does not cross zero, it gives the nearer of both places. Each step looks
// between the last spot and the nearest one on the other side of zero: by the chord at
// first, then by three spots.
func Find(f func(float64) float64, low, high Spot, precision float64) (x float64, steps int) {
	switch {
	case low.Y >= 0:
		return low.X, 0
	case high.Y <= 0:
		return high.X, 0
	}
	last, across := low, high
	share := last.Y / (last.Y - across.Y)
	for steps = 1; ; steps++ {
		before := last
		last = At(f, last.X+share*(across.X-last.X))
		if (last.Y < 0) != (before.Y < 0) {
			before, across = across, before
		}
		margin := precision / 2 * max(math.Abs(last.X), math.Abs(across.X)) / math.Abs(across.X-last.X)
		if last.Y == 0 || margin > 0.5 || steps == mostSteps {
			return last.X, steps
		}
		share = min(max(ahead(last, across, before), margin), 1-margin)
	}
}

// ahead is the share of the way from a to b, with zero in between, at which to look
// next: where the parabola of X over Y through three spots crosses zero, or the middle
// where that is not to be trusted. Source: T. R. Chandrupatla, A new hybrid
// quadratic/bisection algorithm, Advances in Engineering Software 28, 1997, from memory.
func ahead(a, b, c Spot) float64 {
	along, up := (a.X-b.X)/(c.X-b.X), (a.Y-b.Y)/(c.Y-b.Y)
	if !(up*up < along && (1-up)*(1-up) < 1-along) {
		return 0.5
	}
	return a.Y/(b.Y-a.Y)*c.Y/(b.Y-c.Y) + (c.X-a.X)/(b.X-a.X)*a.Y/(c.Y-a.Y)*b.Y/(c.Y-b.Y)
}
