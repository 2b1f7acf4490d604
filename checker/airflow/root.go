package airflow

import "math"

const (
	mostRootSteps = 200
	rootPrecision = 1e-13 // of the root
)

// root finds where a function that never falls crosses zero between low and high;
// where it does not, the nearer end. Each step keeps the bracket: the point where
// the chord crosses zero, with the value of an end that stays twice halved (the
// Illinois method), and every third time the middle.
func root(f func(float64) float64, low, high float64) (x float64, steps int) {
	fLow, fHigh := f(low), f(high)
	if fLow >= 0 {
		return low, 2
	}
	if fHigh <= 0 {
		return high, 2
	}
	kept := 0 // times in a row that the same end stayed, counted negative for the high end
	for steps = 2; steps < mostRootSteps && high-low > rootPrecision*math.Max(math.Abs(low), math.Abs(high)); steps++ {
		x = low - fLow*(high-low)/(fHigh-fLow)
		if steps%3 == 0 || !(x > low && x < high) {
			x = low + (high-low)/2
		}
		switch y := f(x); {
		case y == 0:
			return x, steps
		case y < 0:
			low, fLow, kept = x, y, min(kept-1, -1)
		default:
			high, fHigh, kept = x, y, max(kept+1, 1)
		}
		if kept < -1 {
			fHigh /= 2
		} else if kept > 1 {
			fLow /= 2
		}
	}
	return low + (high-low)/2, steps
}
