package airflow

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestRoots finds known roots of rising functions, steep, level and with a jump,
// and counts its steps.
func TestRoots(t *testing.T) {
	r, most := rand.New(rand.NewPCG(43, 47)), 0
	for range 20_000 {
		at := math.Pow(10, -9+9*r.Float64())
		power := 0.2 + 5*r.Float64()
		x, steps := root(func(x float64) float64 { return math.Pow(x, power) - math.Pow(at, power) }, 0, 1)
		require.InEpsilon(t, at, x, 1e-9, "power %v", power)
		most = max(most, steps)
	}
	assert.Less(t, most, mostRootSteps)
	x, _ := root(func(x float64) float64 {
		if x < 0.3 {
			return -1
		}
		return 1
	}, 0, 1)
	assert.InDelta(t, 0.3, x, 1e-12)
	x, _ = root(func(x float64) float64 { return x + 1 }, 0, 1)
	assert.Zero(t, x)
	x, _ = root(func(x float64) float64 { return x - 2 }, 0, 1)
	assert.Equal(t, 1.0, x)
}

// illinois gives the places that the method looks at, by the formula of textbooks for
// the crossing of a chord (Dahlquist and Bjorck, Numerical Methods, from memory); each
// third is the middle.
func illinois(f func(float64) float64, a, b float64, n int) []float64 {
	fa, fb := f(a), f(b)
	looked, fell, rose := []float64{a, b}, 0, 0
	for len(looked) < n {
		x := (a*fb - b*fa) / (fb - fa)
		if len(looked)%3 == 0 {
			x = (a + b) / 2
		}
		looked = append(looked, x)
		if y := f(x); y < 0 {
			a, fa, fell, rose = x, y, fell+1, 0
		} else {
			b, fb, fell, rose = x, y, 0, rose+1
		}
		if fell > 1 {
			fb /= 2
		}
		if rose > 1 {
			fa /= 2
		}
	}
	return looked
}

// TestRootsAreFoundByTheIllinoisMethod follows its steps, for functions that bend
// either way, and counts them.
func TestRootsAreFoundByTheIllinoisMethod(t *testing.T) {
	for name, f := range map[string]func(float64) float64{
		"upward":   func(x float64) float64 { return math.Pow(x, 6) - 0.5 },
		"far end":  func(x float64) float64 { return math.Pow(x, 6) - 0.9 },
		"downward": func(x float64) float64 { return 0.5 - math.Pow(2-x, 6)/64 },
		"near end": func(x float64) float64 { return math.Sqrt(x) - 0.1 },
	} {
		var looked []float64
		_, steps := root(func(x float64) float64 {
			looked = append(looked, x)
			return f(x)
		}, 0, 2)
		assert.Len(t, looked, steps, name)
		assert.Greater(t, steps, 8, name)
		assert.InDeltaSlice(t, illinois(f, 0, 2, 9), looked[:9], 1e-9, name)
	}
}

// TestRootsThatNeedNoSearch: the first chord of a straight line, and both ends.
func TestRootsThatNeedNoSearch(t *testing.T) {
	for at, want := range map[float64]int{1: 2, 1.5: 2, 3: 2} {
		x, steps := root(func(x float64) float64 { return x - at }, 1, 3)
		assert.Equal(t, at, x)
		assert.Equal(t, want, steps, at)
	}
}
