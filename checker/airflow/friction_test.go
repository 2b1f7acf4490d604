package airflow

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/bounds"
)

func TestRegimes(t *testing.T) {
	for re, want := range map[float64]Regime{1: Laminar, 2000: Laminar, 2001: Transitional, 2300: Transitional, 4000: Transitional, 4001: Turbulent} {
		f, err := FrictionFactor(re, 0.001)
		require.NoError(t, err)
		assert.Equal(t, want, f.Regime, re)
	}
}

// TestBetweenLaminarAndTurbulentTheLargerCounts is the rule that the doc states:
// from 2300 to 4000 the larger of both laws, and no jump below it.
func TestBetweenLaminarAndTurbulentTheLargerCounts(t *testing.T) {
	for _, roughness := range []float64{0, 0.0003, 0.006, 0.05} {
		for re := 2300.0; re <= 4000; re += 50 {
			f, err := FrictionFactor(re, roughness)
			require.NoError(t, err)
			turbulent, _ := colebrook(re, roughness)
			assert.Equal(t, max(64/re, turbulent), f.Factor)
		}
		for _, edge := range []float64{2000, 2300, 4000} {
			below, above := friction(edge*(1-1e-9), roughness), friction(edge*(1+1e-9), roughness)
			assert.InEpsilon(t, below.Factor, above.Factor, 1e-6, edge)
		}
	}
}

// TestLossRisesWithFlow holds that f Re^2, and with it the loss, never falls.
func TestLossRisesWithFlow(t *testing.T) {
	for _, roughness := range []float64{0, 1e-5, 0.001, 0.05} {
		before := 0.0
		for re := 1.0; re < 1e9; re *= 1.003 {
			loss := friction(re, roughness).Factor * re * re
			require.Greater(t, loss, before, re)
			before = loss
		}
	}
}

func TestNewtonNeedsFewSteps(t *testing.T) {
	random, most, least := rand.New(rand.NewPCG(1, 2)), 0, newtonSteps
	for range 200_000 {
		re, roughness := math.Exp(math.Log(2300)+random.Float64()*13), 0.05*math.Pow(random.Float64(), 4)
		f, steps := colebrook(re, roughness)
		most, least = max(most, steps), min(least, steps)
		left, right := 1/math.Sqrt(f), -2*math.Log10(roughness/3.7+2.51/(re*math.Sqrt(f)))
		require.InEpsilon(t, right, left, 1e-12, "%v %v", re, roughness)
	}
	assert.LessOrEqual(t, most, 4, "of %d allowed", newtonSteps)
	assert.Positive(t, least)
}

// TestHaalandIsNearColebrook: Haaland's explicit form is within 2 % of Colebrook's over
// the range of charts; source: Haaland 1983, as textbooks quote it, from memory.
func TestHaalandIsNearColebrook(t *testing.T) {
	haaland := func(re, roughness float64) float64 { return -1.8 * math.Log10(math.Pow(roughness/3.7, 1.11)+6.9/re) }
	for _, re := range []float64{4000, 1e4, 1e5, 1e6, 1e8} {
		for _, roughness := range []float64{0, 1e-5, 1e-3, 0.01, 0.05} {
			f, _ := colebrook(re, roughness)
			assert.InEpsilon(t, 1/math.Sqrt(f), haaland(re, roughness), 0.02, "%v %v", re, roughness)
		}
	}
}

func TestFrictionFactorOutsideItsRange(t *testing.T) {
	for _, re := range []float64{0, -1, math.NaN(), math.Inf(1), 2e9} {
		_, err := FrictionFactor(re, 0)
		assert.ErrorContains(t, err, "Reynolds number")
	}
	for _, roughness := range []float64{-0.001, 0.051, math.NaN()} {
		var out *bounds.Error
		_, err := FrictionFactor(1e4, roughness)
		assert.ErrorAs(t, err, &out)
	}
	_, err := FrictionFactor(mostReynolds, mostRoughness)
	assert.NoError(t, err)
	_, err = FrictionFactor(0, 0)
	assert.EqualError(t, err, `Reynolds number "0" is out of range, expected more than 0 to 1000000000`)
}
