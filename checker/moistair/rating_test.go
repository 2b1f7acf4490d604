package moistair

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestApparentIsNeverBelowRecovery(t *testing.T) {
	for _, power := range []q.Power{0, 20, 80} {
		for sre := q.Ratio(0.4); sre < 0.95; sre += 0.05 {
			r, err := BalancedRating(0.05, power)
			require.NoError(t, err)
			ase, err := r.Apparent(sre)
			require.NoError(t, err)
			assert.GreaterOrEqual(t, float64(ase), float64(sre)-1e-12)
			only, err := r.CoreOnly(ase)
			require.NoError(t, err)
			assert.LessOrEqual(t, float64(only), float64(ase))
		}
	}
}

func TestApparentOfUnequalFlows(t *testing.T) {
	r := Rating{Supply: 0.08, Exhaust: 0.05, SupplyFan: 25, ExhaustFan: 35, Outdoor: celsius(-25), Indoor: celsius(22)}
	ase, err := r.Apparent(0.6)
	require.NoError(t, err)
	heat := 0.6*(0.05*1006*47+35) + 25 // W, into the supply air
	assert.InDelta(t, heat/(0.05*1006*47), float64(ase), 1e-12, "on the smaller flow")
	back, err := r.Recovery(ase)
	require.NoError(t, err)
	assert.InDelta(t, 0.6, float64(back), 1e-12)
}

func TestRatingRefusesWhatLiesOutside(t *testing.T) {
	good, err := BalancedRating(0.05, 60)
	require.NoError(t, err)
	_, err = good.Apparent(1.6)
	assert.ErrorContains(t, err, "sensible recovery efficiency")
	_, err = good.Recovery(-0.1)
	assert.ErrorContains(t, err, "apparent sensible effectiveness")
	_, err = BalancedRating(0, 60)
	assert.ErrorContains(t, err, "air mass flow")
	_, err = BalancedRating(0.05, -60)
	assert.ErrorContains(t, err, "supply fan power")
	same := good
	same.Outdoor = celsius(22)
	_, err = same.CoreOnly(0.7)
	assert.EqualError(t, err, `outdoor temperature "22 C" of a rating is not below the indoor 22 C, expected 1 K or more`)
}
