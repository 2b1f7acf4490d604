package moistair

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// grid is a table of psychrolib.toml.
type grid struct {
	Columns []string
	Rows    [][]float64
}

func readGrids(t *testing.T) (f struct {
	State, Saturation, Atmosphere grid
	WetBulb                       grid `toml:"wet_bulb"`
}) {
	t.Helper()
	published.Read(t, "psychrolib", &f)
	return f
}

// each gives the rows as records by column name.
func (g grid) each(t *testing.T, least int, check func(row map[string]float64)) {
	t.Helper()
	require.GreaterOrEqual(t, len(g.Rows), least)
	for _, r := range g.Rows {
		require.Len(t, r, len(g.Columns))
		row := map[string]float64{}
		for i, name := range g.Columns {
			row[name] = r[i]
		}
		check(row)
	}
}

// TestStatesOfPsychrolib: version 1.1.1. It clips humidity ratios at 1e-7, which
// the grid never reaches, and stops searching within 0.001 K.
func TestStatesOfPsychrolib(t *testing.T) {
	readGrids(t).State.each(t, 180, func(row map[string]float64) {
		s, err := FromRelativeHumidity(celsius(row["dry_bulb"]), q.Ratio(row["relative_humidity"]), q.Pressure(row["pressure"]))
		require.NoError(t, err)
		near(t, row["humidity_ratio"], float64(s.HumidityRatio()), 1e-12, row)
		assert.InDelta(t, row["enthalpy"], float64(s.Enthalpy()), 1e-7, row)
		near(t, row["volume"], float64(s.SpecificVolume()), 1e-12, row)
		near(t, row["density"], float64(s.Density()), 1e-12, row)
		assert.InDelta(t, row["dew_point"], inCelsius(s.DewPoint()), 0.001, row)
		assert.InDelta(t, row["wet_bulb"], inCelsius(s.WetBulb()), 0.001, row)
	})
}

func TestWetBulbsOfPsychrolib(t *testing.T) {
	readGrids(t).WetBulb.each(t, 40, func(row map[string]float64) {
		s, err := FromWetBulb(celsius(row["dry_bulb"]), celsius(row["wet_bulb"]), q.Pressure(row["pressure"]))
		require.NoError(t, err)
		near(t, row["humidity_ratio"], float64(s.HumidityRatio()), 1e-11, row)
	})
}

func TestSaturationOfPsychrolib(t *testing.T) {
	readGrids(t).Saturation.each(t, 31, func(row map[string]float64) {
		p, err := SaturationPressure(celsius(row["temperature"]))
		require.NoError(t, err)
		near(t, row["pressure"], float64(p), 1e-11, row)
	})
}

func TestAtmosphereOfPsychrolib(t *testing.T) {
	readGrids(t).Atmosphere.each(t, 20, func(row map[string]float64) {
		p, err := StationPressure(q.Length(row["elevation"]))
		require.NoError(t, err)
		near(t, row["pressure"], float64(p), 1e-12, row)
		c, err := StandardTemperature(q.Length(row["elevation"]))
		require.NoError(t, err)
		assert.InDelta(t, row["temperature"], inCelsius(c), 1e-9, row)
	})
}
