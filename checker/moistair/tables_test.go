package moistair

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestEngineeringTable(t *testing.T) {
	var f struct {
		Row []struct {
			Temperature   q.Temperature
			Pressure      float64
			HumidityRatio *float64 `toml:"humidity_ratio"`
		}
		Slip []struct {
			Temperature         q.Temperature
			Enthalpy, Equations float64
		}
	}
	published.Read(t, "moist-air-table", &f)
	require.Len(t, f.Row, 16)
	for _, r := range f.Row {
		near(t, r.Pressure, saturation(float64(r.Temperature)), 0.005, r.Temperature)
		if r.HumidityRatio != nil {
			near(t, *r.HumidityRatio, saturatedRatio(float64(r.Temperature), float64(ground)), 0.022, r.Temperature)
		}
	}
	for _, r := range f.Slip { // the page is wrong here; the test says that we do not follow it
		h := float64(air(t, inCelsius(r.Temperature), 1).Enthalpy()) / 1000
		assert.InDelta(t, r.Equations, h, 0.06)
		assert.Greater(t, r.Enthalpy-h, 0.7)
	}
}

func TestHandbookTableOfTheRealGas(t *testing.T) {
	var f struct{ Saturated []saturated }
	published.Read(t, "handbook", &f)
	require.Len(t, f.Saturated, 4)
	for _, r := range f.Saturated {
		s := air(t, inCelsius(r.Temperature), 1)
		near(t, r.HumidityRatio, float64(s.HumidityRatio()), 0.005, r.Temperature)
		assert.InDelta(t, r.Enthalpy, float64(s.Enthalpy())/1000, 0.3, r.Temperature)
	}
}

type saturated struct {
	Temperature   q.Temperature
	Pressure      float64
	HumidityRatio float64 `toml:"humidity_ratio"`
	Enthalpy      float64
}

func TestArithmeticOnTheEquations(t *testing.T) {
	var f struct {
		Saturated    []saturated
		Triple       struct{ Temperature, Pressure float64 }
		HylandWexler struct{ Temperature, Pressure float64 } `toml:"hyland_wexler"`
	}
	published.Read(t, "derived", &f)
	require.Len(t, f.Saturated, 8)
	for _, r := range f.Saturated {
		s := air(t, inCelsius(r.Temperature), 1)
		near(t, r.Pressure, float64(s.VaporPressure()), 5e-5, r.Temperature)
		assert.InDelta(t, r.HumidityRatio, float64(s.HumidityRatio()), 5.1e-7, r.Temperature)
		assert.InDelta(t, r.Enthalpy, float64(s.Enthalpy())/1000, 0.006, r.Temperature)
	}
	assert.InDelta(t, f.Triple.Pressure, saturation(f.Triple.Temperature), 0.005)
	assert.InDelta(t, f.HylandWexler.Pressure, saturation(f.HylandWexler.Temperature), 0.005)
}
