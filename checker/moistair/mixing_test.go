package moistair

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// TestFurnaceTable checks all cells of the National Building Code's table.
func TestFurnaceTable(t *testing.T) {
	var f struct {
		Table struct {
			ReturnAir      float64 `toml:"return_air"`
			Outdoor, Mixed []float64
			Rows           []struct {
				Furnace float64
				Cells   [][]float64
			}
		}
	}
	published.Read(t, "furnace-mixing", &f)
	cells := 0
	for _, row := range f.Table.Rows {
		for i, outdoor := range f.Table.Outdoor {
			for j, printed := range row.Cells[i] {
				share, err := LargestOutdoorShare(celsius(outdoor), celsius(f.Table.ReturnAir), celsius(f.Table.Mixed[j]))
				require.NoError(t, err)
				assert.InDelta(t, printed, math.Floor(row.Furnace*float64(share)+0.5+1e-9), 1e-9, "%g L/s at %g C", row.Furnace, outdoor)
				cells++
			}
		}
	}
	assert.Equal(t, 63, cells)
}

func TestMixIsNearlyTheMeanByMass(t *testing.T) {
	share, err := LargestOutdoorShare(celsius(-20), celsius(22), celsius(15))
	require.NoError(t, err)
	cold, warm := Stream{air(t, -20, 0.5), MassFlow(share)}, Stream{air(t, 22, 0.2), MassFlow(1 - share)}
	m, err := Mix(cold, warm)
	require.NoError(t, err)
	assert.InDelta(t, 15, inCelsius(m.Air.DryBulb()), 0.05)
	assert.InDelta(t, 1, float64(m.Mass), 1e-12)
	assert.Zero(t, m.Fog)
}

func TestMixOfOneIsItself(t *testing.T) {
	s := Stream{air(t, 21, 0.4), 0.1}
	m, err := Mix(s)
	require.NoError(t, err)
	assert.InDelta(t, float64(s.Air.DryBulb()), float64(m.Air.DryBulb()), 1e-9)
	assert.InDelta(t, float64(s.Air.HumidityRatio()), float64(m.Air.HumidityRatio()), 1e-15)
}

// TestMixedFog mixes saturated airs, whose mixture always holds too much water.
func TestMixedFog(t *testing.T) {
	for _, c := range []struct{ cold, warm float64 }{{-30, -5}, {-20, 20}, {-12, 14}, {2, 30}} {
		a, b := Stream{air(t, c.cold, 1), 0.5}, Stream{air(t, c.warm, 1), 0.5}
		m, err := Mix(a, b)
		require.NoError(t, err)
		assert.Positive(t, float64(m.Fog.Total()), c)
		assert.InDelta(t, 1, float64(m.Air.RelativeHumidity()), 1e-9, c)
		in := flows(a.Air, a.Mass).plus(flows(b.Air, b.Mass))
		out := flows(m.Air, m.Mass).plus(leaving(m.Fog, m.Air.DryBulb()))
		assert.InDelta(t, in.water, out.water, 1e-9*in.water)
		assert.InDelta(t, in.heat, out.heat, 1e-9*in.scale)
	}
}

func TestMixRefusesWhatDoesNotMix(t *testing.T) {
	_, err := Mix()
	assert.ErrorContains(t, err, "no air to mix")
	_, err = Mix(Stream{air(t, 20, 0.4), 0.1}, Stream{})
	assert.ErrorContains(t, err, "stream 2: air is not given")
	_, err = Mix(Stream{air(t, 20, 0.4), -0.1})
	assert.ErrorContains(t, err, "stream 1: air mass flow")
	high, err := FromRelativeHumidity(celsius(20), 0.4, 80_000)
	require.NoError(t, err)
	_, err = Mix(Stream{air(t, 20, 0.4), 0.1}, Stream{high, 0.1})
	assert.EqualError(t, err, `stream 2: air pressure "80 kPa" differs from the other air's 101.33 kPa, expected one place`)
}

func TestLargestOutdoorShareAtItsEnds(t *testing.T) {
	for _, c := range []struct {
		outdoor, returned, least float64
		share                    q.Ratio
	}{{15, 22, 15, 1}, {18, 22, 15, 1}, {-10, 15, 15, 0}, {-10, 12, 15, 0}, {18, 12, 15, 1}} {
		got, err := LargestOutdoorShare(celsius(c.outdoor), celsius(c.returned), celsius(c.least))
		require.NoError(t, err)
		assert.Equal(t, c.share, got, c)
	}
	_, err := LargestOutdoorShare(celsius(-99), celsius(20), celsius(15))
	assert.ErrorContains(t, err, "outdoor temperature")
}
