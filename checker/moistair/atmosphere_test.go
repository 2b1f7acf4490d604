package moistair

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

const psi = 6894.757293168361 // Pa

func pressureAt(t *testing.T, z q.Length) float64 {
	t.Helper()
	p, err := StationPressure(z)
	require.NoError(t, err)
	return float64(p)
}

type table struct {
	Feet, PSIA, Metres, Kilopascals []float64
	FeetMercury                     []float64 `toml:"feet_mercury"`
	InchesOfMercury                 []float64 `toml:"inches_of_mercury"`
	Within                          float64
	Factor, Fahrenheit              []float64
	Misprint                        struct {
		Feet, PSIA, Equation float64
		OtherTable           float64 `toml:"other_table"`
	}
}

func readAtmosphere(t *testing.T) (f struct {
	Stations, Standard, Process, Density, Temperature table
	TradeDensity                                      table `toml:"trade_density"`
}) {
	t.Helper()
	published.Read(t, "atmosphere", &f)
	return f
}

func TestStationPressuresOfClimaticTables(t *testing.T) {
	f := readAtmosphere(t).Stations
	require.Len(t, f.Kilopascals, 25)
	for i, z := range f.Metres {
		assert.InDelta(t, f.Kilopascals[i], pressureAt(t, q.Length(z))/1000, 0.0051, "%g m", z)
	}
	for i, z := range f.Feet {
		assert.InDelta(t, f.PSIA[i], pressureAt(t, feet(z))/psi, 0.0011, "%g ft", z)
	}
}

func TestTablesOfTheStandardAtmosphere(t *testing.T) {
	f := readAtmosphere(t)
	require.Len(t, f.Standard.Feet, 11)
	for i, z := range f.Standard.Feet {
		near(t, f.Standard.PSIA[i], pressureAt(t, feet(z))/psi, f.Standard.Within, "%g ft", z)
	}
	m := f.Standard.Misprint // the printed figure is wrong, and ours is not it
	ours := pressureAt(t, feet(m.Feet)) / psi
	assert.InDelta(t, m.Equation, ours, 0.0011)
	assert.InDelta(t, m.OtherTable, ours, 0.005)
	assert.Greater(t, math.Abs(m.PSIA-ours), 0.009)
	for i, z := range f.Process.Feet {
		near(t, f.Process.PSIA[i], pressureAt(t, feet(z))/psi, f.Process.Within, "%g ft", z)
	}
	for i, z := range f.Process.FeetMercury {
		near(t, f.Process.InchesOfMercury[i], pressureAt(t, feet(z))/3386.4, f.Process.Within, "%g ft", z)
	}
}

func TestDensityByElevation(t *testing.T) {
	f := readAtmosphere(t)
	density := func(z, f float64) float64 {
		d, err := AirDensity(feet(z), fahrenheit(f))
		require.NoError(t, err)
		return float64(d)
	}
	for i, z := range f.Density.Feet {
		assert.InDelta(t, f.Density.Factor[i], density(z, 70)/density(0, 70), 0.00051, "%g ft", z)
	}
	const poundPerFoot3 = 0.45359237 / (0.3048 * 0.3048 * 0.3048)
	for i, z := range f.TradeDensity.Feet {
		at := f.TradeDensity.Fahrenheit[i]
		trade := 0.075 * poundPerFoot3 * pressureAt(t, feet(z)) / psi / 14.696 * 530 / (at + 460)
		near(t, trade, density(z, at), f.TradeDensity.Within, "%g ft", z)
	}
	near(t, float64(StandardDensity), density(0, 68), 5e-4) // 20 C
}

func TestStandardTemperature(t *testing.T) {
	f := readAtmosphere(t).Temperature
	for i, z := range f.Feet {
		got, err := StandardTemperature(feet(z))
		require.NoError(t, err)
		assert.InDelta(t, f.Fahrenheit[i], inFahrenheit(got), 0.002)
	}
}

func TestAtmosphereRefusesOtherPlaces(t *testing.T) {
	for _, z := range []q.Length{-1001, 9001, q.Length(math.NaN())} {
		_, err := StationPressure(z)
		assert.ErrorContains(t, err, "elevation")
		_, err = StandardTemperature(z)
		assert.ErrorContains(t, err, "elevation")
		_, err = AirDensity(z, celsius(20))
		assert.ErrorContains(t, err, "elevation")
	}
	_, err := AirDensity(0, celsius(99))
	assert.ErrorContains(t, err, "dry bulb")
}
