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
