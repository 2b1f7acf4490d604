package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

var everyRule = []Superposition{Quadrature, HalfFan, Power}

func combined(t *testing.T, s Superposition, supply, exhaust, natural q.Flow) float64 {
	t.Helper()
	got, err := s.Combine(supply, exhaust, natural)
	require.NoError(t, err)
	return float64(got)
}

// TestSuperpositionByHand: no worked example has been published; these follow
// from the formulas. 30 and 40 make 50 in quadrature.
func TestSuperpositionByHand(t *testing.T) {
	assert.InDelta(t, 50, combined(t, Quadrature, 0, 30, 40), 1e-12)
	assert.InDelta(t, 70, combined(t, Quadrature, 50, 20, 40), 1e-12)
	assert.InDelta(t, 55, combined(t, HalfFan, 0, 30, 40), 1e-12)
	assert.InDelta(t, 90, combined(t, HalfFan, 0, 90, 40), 1e-12)
	assert.InDelta(t, math.Cbrt(9*9), combined(t, Power, 0, 4, 1), 1e-12)       // (1 + 8)^(2/3)
	assert.InDelta(t, 1+math.Cbrt(7*7), combined(t, Power, 1, 0, 4), 1e-12)     // 1 + (8 - 1)^(2/3)
	assert.InDelta(t, 4, combined(t, Power, 4, 0, 1), 1e-12, "no infiltration") // I < U
}

func TestBalancedFansAddInFull(t *testing.T) {
	for _, s := range everyRule {
		assert.InDelta(t, 70, combined(t, s, 40, 40, 30), 1e-12, s)
		assert.InDelta(t, 30, combined(t, s, 0, 0, 30), 1e-12, s)
	}
}

// TestPrintedExponentIsASlip: the notes print 0.67, with which infiltration alone
// would change by itself, and by more in one unit than in another.
func TestPrintedExponentIsASlip(t *testing.T) {
	assert.Greater(t, math.Pow(math.Pow(30, 1.5), 0.67), 30.5)
	assert.InDelta(t, 30, combined(t, Power, 0, 0, 30), 1e-12)
}

func TestUnbalancedFansAddLessThanTheirFlow(t *testing.T) {
	for _, s := range everyRule {
		for _, natural := range []q.Flow{0, 5, 20, 60, 90} {
			for _, fan := range []q.Flow{0, 5, 20, 60, 90} {
				for _, exhausting := range []bool{true, false} {
					supply, exhaust := fan, q.Flow(0)
					if exhausting {
						supply, exhaust = exhaust, supply
					}
					got := combined(t, s, supply, exhaust, natural)
					assert.LessOrEqual(t, got, float64(natural+fan)+1e-9)
					assert.GreaterOrEqual(t, got, float64(max(natural, fan))-1e-9)
				}
			}
		}
	}
}

func TestSuperpositionNamesAndMistakes(t *testing.T) {
	assert.Equal(t, "quadrature", Quadrature.String())
	assert.Equal(t, "half fan", HalfFan.String())
	assert.Equal(t, "power", Power.String())
	assert.Equal(t, "superposition 7", Superposition(7).String())
	_, err := Superposition(7).Combine(1, 1, 1)
	assert.ErrorContains(t, err, "superposition rule")
	_, err = Quadrature.Combine(-1, 1, 1)
	assert.ErrorContains(t, err, "supply flow")
}
