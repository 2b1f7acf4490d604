package moistair

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// onset is a frost onset that must exist, in C.
func onset(t testing.TB, c Core, indoor State, supply, extract MassFlow) float64 {
	t.Helper()
	got, found, err := c.FrostOnset(indoor, supply, extract)
	require.NoError(t, err)
	require.True(t, found)
	return inCelsius(got)
}

func TestFrostStartsAtTheOnset(t *testing.T) {
	for _, c := range []Core{{Sensible: 0.6}, {Sensible: 0.85}, {Sensible: 0.75, Latent: 0.5}} {
		for _, rh := range []float64{0.2, 0.4, 0.6} {
			indoor := air(t, 21, rh)
			at := onset(t, c, indoor, 0.05, 0.06)
			frost := func(outdoor float64) bool {
				return run(t, c, Operation{Outdoor: air(t, outdoor, 1), Indoor: indoor, Supply: 0.05, Extract: 0.06}).Frost
			}
			assert.True(t, frost(at-0.001), "%+v at %g", c, rh)
			assert.False(t, frost(at+0.001), "%+v at %g", c, rh)
		}
	}
}

func TestFrostOnsetMovesAsItShould(t *testing.T) {
	indoor := air(t, 21, 0.35)
	base := onset(t, Core{Sensible: 0.75}, indoor, 0.06, 0.06)
	assert.Greater(t, onset(t, Core{Sensible: 0.85}, indoor, 0.06, 0.06), base, "a better core freezes earlier")
	assert.Less(t, onset(t, Core{Sensible: 0.75}, indoor, 0.05, 0.06), base, "more exhaust than supply keeps it warm")
	assert.Less(t, onset(t, Core{Sensible: 0.75, Latent: 0.7}, indoor, 0.06, 0.06), base, "passing moisture dries the exhaust")
	assert.Less(t, onset(t, Core{Sensible: 0.75}, air(t, 21, 0.1), 0.06, 0.06), base, "dry air has a frost point below 0 C")
	assert.Greater(t, onset(t, Core{Sensible: 0.75}, air(t, 18, 0.35), 0.06, 0.06), base, "a cool house freezes it earlier")
}

func TestSomeCoresNeverFreeze(t *testing.T) {
	for _, c := range []Core{{}, {Sensible: 0.2}} {
		_, found, err := c.FrostOnset(air(t, 21, 0.4), 0.06, 0.06)
		require.NoError(t, err)
		assert.False(t, found)
	}
	_, found, err := (Core{Sensible: 0.9}).FrostOnset(air(t, 21, 0), 0.06, 0.06)
	require.NoError(t, err)
	assert.False(t, found, "dry air has nothing to freeze")
	for _, e := range []q.Ratio{0, 0.1} {
		_, found, err = DryFrostOnset(celsius(21), e)
		require.NoError(t, err)
		assert.False(t, found)
	}
}

func TestFrozenHouseFreezesAtOnce(t *testing.T) {
	at, found, err := DryFrostOnset(celsius(0), 0)
	require.NoError(t, err)
	assert.True(t, found)
	assert.Equal(t, celsius(0), at)
	assert.InDelta(t, -10, onset(t, Core{Sensible: 1}, air(t, -10, 1), 0.06, 0.06), 0.001)
}

func TestFrostMargin(t *testing.T) {
	assert.InDelta(t, -8, float64(FrostMargin(celsius(-15), celsius(-7))), 1e-12)
	assert.InDelta(t, 2, float64(FrostMargin(celsius(-5), celsius(-7))), 1e-12)
}

func TestFrostRefusesWhatLiesOutside(t *testing.T) {
	_, _, err := (Core{Sensible: 1.1}).FrostOnset(air(t, 21, 0.4), 0.06, 0.06)
	assert.EqualError(t, err, `sensible effectiveness "110 %" is out of range, expected 0 % to 100 %`)
	_, _, err = (Core{}).FrostOnset(State{}, 0.06, 0.06)
	assert.ErrorContains(t, err, "indoor air is not given")
	_, _, err = (Core{}).FrostOnset(air(t, 21, 0.4), 0, 0.06)
	assert.ErrorContains(t, err, "supply mass flow")
	_, _, err = DryFrostOnset(celsius(-1), 0.5)
	assert.ErrorContains(t, err, "indoor temperature")
}
