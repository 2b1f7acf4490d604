package roots

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// search looks for a root between two places.
func search(f func(float64) float64, low, high float64) (x float64, steps int) {
	return Find(f, At(f, low), At(f, high), 1e-13)
}

// TestRoots finds known roots of rising functions, steep, level and with a jump,
// and counts its steps.
func TestRoots(t *testing.T) {
	r, most, sum := rand.New(rand.NewPCG(43, 47)), 0, 0
	for range 20_000 {
		at := math.Pow(10, -9+9*r.Float64())
		power := 0.2 + 5*r.Float64()
		x, steps := search(func(x float64) float64 { return math.Pow(x, power) - math.Pow(at, power) }, 0, 1)
		require.InEpsilon(t, at, x, 1e-9, "power %v", power)
		most, sum = max(most, steps), sum+steps
	}
	assert.Less(t, most, mostSteps/2)
	assert.Less(t, sum, 25*20_000)
	x, _ := search(func(x float64) float64 {
		if x < 0.3 {
			return -1
		}
		return 1
	}, 0, 1)
	assert.InDelta(t, 0.3, x, 1e-12)
	x, _ = search(func(x float64) float64 { return x + 1 }, 0, 1)
	assert.Zero(t, x)
	x, _ = search(func(x float64) float64 { return x - 2 }, 0, 1)
	assert.Equal(t, 1.0, x)
}

// TestRootsAreFoundInFewSteps: for functions that bend either way the first step is
// along the chord, and few more follow. Straight lines and both ends need no search.
func TestRootsAreFoundInFewSteps(t *testing.T) {
	for name, f := range map[string]func(float64) float64{
		"upward":   func(x float64) float64 { return math.Pow(x, 6) - 0.5 },
		"far end":  func(x float64) float64 { return math.Pow(x, 6) - 0.9 },
		"downward": func(x float64) float64 { return 0.5 - math.Pow(2-x, 6)/64 },
		"near end": func(x float64) float64 { return math.Sqrt(x) - 0.1 },
		"duct":     func(x float64) float64 { return 50*math.Pow(x, 1.9) + 20*x - 60 },
	} {
		var looked []float64
		x, steps := search(func(x float64) float64 {
			looked = append(looked, x)
			return f(x)
		}, 0, 2)
		assert.Len(t, looked, steps+2, name)
		assert.LessOrEqual(t, steps, 16, name)
		assert.InEpsilon(t, -2*f(0)/(f(2)-f(0)), looked[2], 1e-12, name)
		assert.LessOrEqual(t, f(x*(1-1e-13)), 0.0, name)
		assert.GreaterOrEqual(t, f(x*(1+1e-13)), 0.0, name)
	}
	for at, want := range map[float64]int{0: 0, 1: 0, 1.5: 1, 3: 0, 4: 0} {
		x, steps := search(func(x float64) float64 { return x - at }, 1, 3)
		assert.Equal(t, min(max(at, 1), 3), x)
		assert.Equal(t, want, steps, at)
	}
}

// TestLooksAheadByAParabola: three spots of x = 2 + 3 y + y^2/10 lead to 2, and spots
// that lie on no such gentle bend to the middle. The first of them is between the others.
func TestLooksAheadByAParabola(t *testing.T) {
	at := func(y float64) Spot { return Spot{2 + 3*y + y*y/10, y} }
	for _, y := range [][3]float64{{-1, 2, -2}, {1, -3, 4}, {3, -1, 4}} {
		a, b, c := at(y[0]), at(y[1]), at(y[2])
		assert.InDelta(t, 2, a.X+ahead(a, b, c)*(b.X-a.X), 1e-12, y)
	}
	low, high := Spot{0, -1}, Spot{1, 9}
	for y, trusted := range map[float64]bool{1.8: false, 2: true, 4: true, 6: true, 6.2: false} { // 4 is on the chord
		assert.Equal(t, trusted, ahead(Spot{0.5, y}, low, high) != 0.5, y)
	}
	assert.Equal(t, 0.5, ahead(Spot{1, math.NaN()}, low, high))
}
