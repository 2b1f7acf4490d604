package moistair

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

type coreFile struct {
	Apparent []struct {
		ID                      string
		Outdoor, Indoor, Supply q.Temperature
		Effectiveness           q.Ratio
	}
	Balanced []struct {
		ID                      string
		Effectiveness, Humidity q.Ratio
		Outdoor, Indoor, Supply q.Temperature
		DryExhaust              q.Temperature `toml:"dry_exhaust"`
		Condenses, Frost        bool
	}
	EnthalpyCore struct {
		Outdoor, Indoor, Supply q.Temperature
		OutdoorHumidity         q.Ratio `toml:"outdoor_humidity"`
		IndoorHumidity          q.Ratio `toml:"indoor_humidity"`
		Sensible, Latent        q.Ratio
		HumidityRatio           float64 `toml:"humidity_ratio"`
		Enthalpy                float64
		RelativeHumidity        float64 `toml:"relative_humidity"`
		Total                   float64
	} `toml:"enthalpy_core"`
	Listed struct {
		Flow             q.Flow
		Power            q.Power
		SensibleRecovery []q.Ratio `toml:"sensible_recovery"`
		Apparent         []float64
	}
	FrostOnset struct {
		Indoor        q.Temperature
		Effectiveness []q.Ratio
		Celsius       []float64
	} `toml:"frost_onset"`
}

func readCore(t *testing.T) (f coreFile) {
	t.Helper()
	published.Read(t, "core", &f)
	require.NotEmpty(t, f.Apparent)
	require.Len(t, f.Balanced, 2)
	require.Len(t, f.FrostOnset.Effectiveness, 6)
	return f
}

// run is a core that must work.
func run(t testing.TB, c Core, o Operation) Exchange {
	t.Helper()
	x, err := c.Run(o)
	require.NoError(t, err)
	return x
}

// even is a core between two states with equal flows.
func even(outdoor, indoor State) Operation {
	return Operation{Outdoor: outdoor, Indoor: indoor, Supply: 0.06, Extract: 0.06}
}

func TestSupplyTemperatureFromApparentEffectiveness(t *testing.T) {
	for _, c := range readCore(t).Apparent {
		outdoor, indoor := air(t, inCelsius(c.Outdoor), 0.7), air(t, inCelsius(c.Indoor), 0.3)
		x := run(t, Core{Sensible: c.Effectiveness}, even(outdoor, indoor))
		assert.InDelta(t, inFahrenheit(c.Supply), inFahrenheit(x.Supply.DryBulb()), 0.01, c.ID)
	}
}

func TestBalancedSensibleCores(t *testing.T) {
	for _, c := range readCore(t).Balanced {
		outdoor, indoor := air(t, inCelsius(c.Outdoor), 0.8), air(t, inCelsius(c.Indoor), float64(c.Humidity))
		x := run(t, Core{Sensible: c.Effectiveness}, even(outdoor, indoor))
		assert.InDelta(t, float64(c.Supply), float64(x.Supply.DryBulb()), 1e-9, c.ID)
		assert.InDelta(t, float64(c.DryExhaust), float64(x.DryExhaust), 1e-9, c.ID)
		assert.Equal(t, c.Condenses, x.Condenses(), c.ID)
		assert.Equal(t, c.Frost, x.Frost, c.ID)
		assert.InDelta(t, float64(outdoor.HumidityRatio()), float64(x.Supply.HumidityRatio()), 1e-15, c.ID)
	}
}

func TestEnthalpyCoreInSummer(t *testing.T) {
	f := readCore(t).EnthalpyCore
	outdoor, indoor := air(t, inCelsius(f.Outdoor), float64(f.OutdoorHumidity)), air(t, inCelsius(f.Indoor), float64(f.IndoorHumidity))
	x := run(t, Core{Sensible: f.Sensible, Latent: f.Latent}, even(outdoor, indoor))
	assert.InDelta(t, float64(f.Supply), float64(x.Supply.DryBulb()), 1e-9)
	assert.InDelta(t, f.HumidityRatio, float64(x.Supply.HumidityRatio()), 5e-6)
	assert.InDelta(t, f.Enthalpy, float64(x.Supply.Enthalpy()), 5)
	assert.InDelta(t, f.RelativeHumidity, float64(x.Supply.RelativeHumidity()), 0.0005)
	r, err := Recovered(outdoor, x.Supply, indoor, 0.06, 0.06)
	require.NoError(t, err)
	assert.InDelta(t, f.Total, float64(r.Total.Value), 0.0005)
	assert.Negative(t, float64(x.Heat), "heat is kept out")
	assert.Negative(t, float64(x.Moisture), "moisture is kept out")
}

func TestListedRecoveryToApparent(t *testing.T) {
	f := readCore(t).Listed
	r, err := BalancedRating(f.Flow, f.Power)
	require.NoError(t, err)
	for i, sre := range f.SensibleRecovery {
		ase, err := r.Apparent(sre)
		require.NoError(t, err)
		assert.InDelta(t, f.Apparent[i], float64(ase), 0.00051, sre)
		back, err := r.Recovery(ase)
		require.NoError(t, err)
		assert.InDelta(t, float64(sre), float64(back), 1e-12)
	}
}

func TestDryFrostOnsetByEffectiveness(t *testing.T) {
	f := readCore(t).FrostOnset
	for i, e := range f.Effectiveness {
		onset, found, err := DryFrostOnset(f.Indoor, e)
		require.NoError(t, err)
		require.True(t, found)
		assert.InDelta(t, f.Celsius[i], inCelsius(onset), 0.06, e)
	}
}

func TestFrostOnsetOfASensibleCoreIsTheDryOne(t *testing.T) {
	f := readCore(t).FrostOnset
	indoor := air(t, inCelsius(f.Indoor), 0.4)
	for i, e := range f.Effectiveness {
		onset, found, err := (Core{Sensible: e}).FrostOnset(indoor, 0.06, 0.06)
		require.NoError(t, err)
		require.True(t, found)
		assert.InDelta(t, f.Celsius[i], inCelsius(onset), 0.06, e)
		dry, _, err := DryFrostOnset(f.Indoor, e)
		require.NoError(t, err)
		assert.InDelta(t, float64(dry), float64(onset), 1e-9, e)
	}
}
