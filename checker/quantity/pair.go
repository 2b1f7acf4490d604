package quantity

import (
	"math"
	"reflect"
)

// mostExtra is how many decimals beyond the usual ones FormatPair tries. With
// them any two values that Compare tells apart print differently.
const mostExtra = 16

// FormatPair prints two values that stand side by side, such as what was found
// and what is required. Both are in one unit, and with as many digits as it
// takes to show that they differ, if Compare says that they do.
func FormatPair(a, b any, s System) (string, string) {
	x, isNumberA := size(a)
	y, isNumberB := size(b)
	if !isNumberA || !isNumberB {
		return Format(a, s), Format(b, s)
	}
	st := style{ruler: larger(x, y)}
	left, right := format(a, s, st), format(b, s, st)
	for left == right && Compare(x, y) != 0 && st.extra < mostExtra {
		st.extra++
		left, right = format(a, s, st), format(b, s, st)
	}
	return left, right
}

// size gives the number inside a quantity or a plain number, in SI.
func size(v any) (float64, bool) {
	r := reflect.ValueOf(v)
	for r.Kind() == reflect.Pointer {
		r = r.Elem()
	}
	switch {
	case r.CanFloat():
		return r.Float(), true
	case r.CanInt():
		return float64(r.Int()), true
	}
	return 0, false
}

// larger gives the larger finite size, which chooses the unit of both.
func larger(a, b float64) float64 {
	size := 0.0
	for _, x := range []float64{a, b} {
		if x = math.Abs(x); !math.IsNaN(x) && !math.IsInf(x, 0) {
			size = max(size, x)
		}
	}
	return size
}
