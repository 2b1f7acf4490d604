package quantity

import (
	"cmp"
	"math"
)

// Tolerance is the relative difference up to which Compare takes two values for
// equal. It is far above rounding noise and far below any printed digit.
const Tolerance = 1e-9

// nearZero is the absolute difference, in SI, up to which two values are equal:
// a difference of two equal lengths is seldom exactly zero.
const nearZero = 1e-12

// Compare gives -1, 0 or +1 as a is less than, equal to or greater than b. Both
// are in the same SI unit. Values within Tolerance of the larger one are equal,
// so that 10 ft and 3048 mm are. An infinity equals only itself, and NaN comes
// before all numbers.
func Compare(a, b float64) int {
	if math.IsInf(a, 0) || math.IsInf(b, 0) {
		return cmp.Compare(a, b)
	}
	if math.Abs(a-b) <= max(nearZero, Tolerance*max(math.Abs(a), math.Abs(b))) {
		return 0
	}
	return cmp.Compare(a, b)
}
