package moistair

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// everyState walks over the whole range of air.
func everyState(t *testing.T, check func(s State)) {
	t.Helper()
	for _, p := range []q.Pressure{LowestPressure, 60_000, 85_000, ground, HighestPressure} {
		for c := -70.0; c <= 60; c += 3.25 {
			for _, rh := range []q.Ratio{0.001, 0.05, 0.3, 0.62, 0.97, 1} {
				s, err := FromRelativeHumidity(celsius(c), rh, p)
				require.NoError(t, err)
				check(s)
			}
		}
	}
}

func TestPropertiesInvertTheConstructors(t *testing.T) {
	everyState(t, func(s State) {
		rh, err := FromRelativeHumidity(s.DryBulb(), s.RelativeHumidity(), s.Pressure())
		require.NoError(t, err)
		near(t, s.humidity, rh.humidity, 1e-12)

		dew, err := FromDewPoint(s.DryBulb(), s.DewPoint(), s.Pressure())
		require.NoError(t, err)
		if s.DewPoint() > coldestSaturation { // drier air has no dew point in range
			near(t, s.humidity, dew.humidity, 1e-11)
		}
		wet, err := FromWetBulb(s.DryBulb(), s.WetBulb(), s.Pressure())
		require.NoError(t, err)
		assert.InDelta(t, s.humidity, wet.humidity, 1e-12+1e-11*s.humidity, "%v", s)
		again, err := FromHumidityRatio(s.DryBulb(), s.HumidityRatio(), s.Pressure())
		require.NoError(t, err)
		assert.Equal(t, s, again)
	})
}

func TestDewPointWetBulbDryBulbStandInOrder(t *testing.T) {
	everyState(t, func(s State) {
		assert.LessOrEqual(t, float64(s.DewPoint()), float64(s.WetBulb())+1e-6, "%v", s)
		assert.LessOrEqual(t, float64(s.WetBulb()), float64(s.DryBulb()), "%v", s)
	})
}

func TestPropertiesGrowWithHumidity(t *testing.T) {
	for c := -40.0; c <= 55; c += 5 {
		last := air(t, c, 0.01)
		for rh := 0.05; rh <= 1; rh += 0.05 {
			s := air(t, c, rh)
			assert.Greater(t, s.Enthalpy(), last.Enthalpy())
			assert.Greater(t, s.DewPoint(), last.DewPoint())
			assert.Greater(t, s.WetBulb(), last.WetBulb())
			assert.Greater(t, s.SpecificVolume(), last.SpecificVolume())
			assert.Less(t, s.Density(), last.Density(), "humid air is lighter")
			last = s
		}
	}
}

// TestWetBulbAroundFreezing holds that 32 F counts as a wet bulb however it is
// rounded, and that the wet one of two solutions is given.
func TestWetBulbAroundFreezing(t *testing.T) {
	exact, err := FromWetBulb(celsius(2), celsius(0), ground)
	require.NoError(t, err)
	for _, slip := range []q.Temperature{-1e-13, 1e-13, -1e-8} {
		s, err := FromWetBulb(celsius(2), celsius(0)+slip, ground)
		require.NoError(t, err)
		near(t, exact.humidity, s.humidity, 1e-6)
	}
	assert.InDelta(t, 0, inCelsius(exact.WetBulb()), 1e-6)
	frozen, err := FromWetBulb(celsius(2), celsius(-0.1), ground)
	require.NoError(t, err)
	require.Greater(t, frozen.humidity, exact.humidity, "a frozen bulb at -0.1 C is in more humid air than a wet one at 0 C")
	assert.Positive(t, inCelsius(frozen.WetBulb()))
}

func TestMassFlowAndVolumeFlow(t *testing.T) {
	s := air(t, 21, 0.4)
	m, err := s.MassFlow(0.05)
	require.NoError(t, err)
	near(t, 0.05, float64(s.Flow(m)), 1e-12)
	near(t, float64(m)*(1+s.humidity), 0.05*float64(s.Density()), 1e-12)
	standard, err := StandardMassFlow(0.05)
	require.NoError(t, err)
	assert.InDelta(t, 0.0602, float64(standard), 1e-12)
	_, err = State{}.MassFlow(0.05)
	assert.ErrorContains(t, err, "air is not given")
	for _, flow := range []q.Flow{0, -0.1, 1e6, q.Flow(math.NaN())} {
		_, err = s.MassFlow(flow)
		assert.ErrorContains(t, err, "air mass flow")
		_, err = StandardMassFlow(flow)
		assert.ErrorContains(t, err, "air mass flow")
	}
}

func TestZeroStateIsNoAir(t *testing.T) {
	var s State
	assert.Zero(t, s.DryBulb())
	assert.Zero(t, s.HumidityRatio())
	assert.Zero(t, s.Pressure())
	assert.Zero(t, s.VaporPressure())
	assert.Zero(t, s.RelativeHumidity())
	assert.Zero(t, s.Enthalpy())
	assert.Zero(t, s.SpecificVolume())
	assert.Zero(t, s.Density())
	assert.Zero(t, s.WetBulb())
	assert.Zero(t, s.Flow(1))
	assert.Zero(t, s.DewPoint())
}

func TestDryAirHasItsDewPointAtTheEndOfTheRange(t *testing.T) {
	assert.Equal(t, q.Temperature(coldestSaturation), air(t, 20, 0).DewPoint())
}

func TestStateRefusesWhatCannotBe(t *testing.T) {
	nan := q.Temperature(math.NaN())
	makers := map[string]func(t, x q.Temperature, p q.Pressure) error{
		"relative humidity": func(t, x q.Temperature, p q.Pressure) error {
			_, err := FromRelativeHumidity(t, q.Ratio(x), p)
			return err
		},
		"humidity ratio": func(t, x q.Temperature, p q.Pressure) error {
			_, err := FromHumidityRatio(t, HumidityRatio(x), p)
			return err
		},
		"dew point": func(t, x q.Temperature, p q.Pressure) error { _, err := FromDewPoint(t, x, p); return err },
		"wet bulb":  func(t, x q.Temperature, p q.Pressure) error { _, err := FromWetBulb(t, x, p); return err },
	}
	for name, make := range makers {
		for _, c := range []q.Temperature{celsius(-71), celsius(61), nan} {
			assert.ErrorContains(t, make(c, 0, ground), "dry bulb temperature", name)
		}
		for _, p := range []q.Pressure{0, 29_000, 121_000, q.Pressure(nan)} {
			assert.ErrorContains(t, make(celsius(20), 0, p), "air pressure", name)
		}
		for _, x := range []q.Temperature{-1, 400, nan} {
			var out *bounds.Error
			require.ErrorAs(t, make(celsius(20), x, ground), &out, name)
			assert.Contains(t, out.What, name)
		}
	}
	_, err := FromWetBulb(celsius(40), celsius(5), ground)
	assert.EqualError(t, err, `wet bulb temperature "5 C" is below that of dry air at 40 C`)
	_, err = FromHumidityRatio(celsius(20), 0.02, ground)
	assert.EqualError(t, err, `humidity ratio "20 g/kg" is out of range, expected 0 g/kg to 14.695 g/kg`)
}

func TestValuesPrintWithTheirUnits(t *testing.T) {
	assert.Equal(t, "6.17 g/kg", HumidityRatio(0.00617).String())
	assert.Equal(t, "57.42 kJ/kg", Enthalpy(57_420).String())
	assert.Equal(t, "0.853 m3/kg", SpecificVolume(0.853).String())
	assert.Equal(t, "1.204 kg/m3", Density(1.204).String())
	assert.Equal(t, "60 g/s", MassFlow(0.06).String())
}
