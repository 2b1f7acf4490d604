package moistair

import (
	"math"
	"testing"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// FuzzState holds that any numbers give either an error or air with finite
// properties in order.
func FuzzState(f *testing.F) {
	f.Add(293.15, 0.5, 101325.0)
	f.Add(233.15, 1.0, 30000.0)
	f.Add(273.15, 0.9, 85000.0)
	f.Add(math.NaN(), math.Inf(1), -1.0)
	f.Fuzz(func(t *testing.T, kelvin, x, pascal float64) {
		dry, p := q.Temperature(kelvin), q.Pressure(pascal)
		soundState(t)(FromRelativeHumidity(dry, q.Ratio(x), p))
		soundState(t)(FromHumidityRatio(dry, HumidityRatio(x), p))
		soundState(t)(FromDewPoint(dry, q.Temperature(x), p))
		soundState(t)(FromWetBulb(dry, q.Temperature(x), p))
		soundState(t)(FromWetBulb(dry, q.Temperature(kelvin*x), p))
	})
}

func soundState(t *testing.T) func(s State, err error) {
	return func(s State, err error) {
		t.Helper()
		if err != nil {
			if s != (State{}) || err.Error() == "" {
				t.Fatalf("%v with error %q", s, err)
			}
			return
		}
		finite(t, float64(s.VaporPressure()), float64(s.RelativeHumidity()), float64(s.Enthalpy()), float64(s.SpecificVolume()), float64(s.Density()))
		dew, wet := float64(s.DewPoint()), float64(s.WetBulb())
		finite(t, dew, wet)
		if s.dryBulb < wet || dew > wet+1e-6 && wet > coldestSaturation {
			t.Fatalf("%v: dew point %v, wet bulb %v", s, dew, wet)
		}
	}
}

func finite(t *testing.T, numbers ...float64) {
	t.Helper()
	for _, x := range numbers {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%v", numbers)
		}
	}
}

// FuzzRun holds that a core at any numbers gives an error or finite air whose
// balances close, and that the frost onset terminates.
func FuzzRun(f *testing.F) {
	f.Add(0.75, 0.0, 253.15, 0.8, 294.15, 0.4, 0.06, 0.06, 30.0)
	f.Add(0.75, 0.6, 308.15, 0.5, 297.15, 0.5, 0.05, 0.08, 0.0)
	f.Add(1.0, 1.0, 203.15, 1.0, 333.15, 1.0, 100.0, 1e-4, 1e5)
	f.Fuzz(func(t *testing.T, sensible, latent, out, outRH, in, inRH, supply, extract, fan float64) {
		outdoor, err := FromRelativeHumidity(q.Temperature(out), q.Ratio(outRH), ground)
		if err != nil {
			return
		}
		indoor, err := FromRelativeHumidity(q.Temperature(in), q.Ratio(inRH), ground)
		if err != nil {
			return
		}
		c := Core{Sensible: q.Ratio(sensible), Latent: q.Ratio(latent)}
		o := Operation{outdoor, indoor, MassFlow(supply), MassFlow(extract), q.Power(fan), q.Power(fan)}
		x, err := c.Run(o)
		if err != nil {
			return
		}
		finite(t, float64(x.Heat), float64(x.Sensible), float64(x.Moisture), float64(x.OutdoorAir), float64(x.DryExhaust))
		if ratio := supply / extract; ratio > 1e-2 && ratio < 1e2 { // beyond, rounding of the large stream drowns the small one
			closes(t, o, x)
		}
		if at, found, err := c.FrostOnset(indoor, o.Supply, o.Extract); err != nil || found && (at < Coldest || at > indoor.DryBulb()) {
			t.Fatalf("onset %v, %v", at, err)
		}
	})
}
