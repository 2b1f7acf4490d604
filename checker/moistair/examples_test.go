package moistair

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// figure is a printed value and how far ours may lie from it.
type figure struct{ Value, Within float64 }

type example struct {
	ID               string
	DryBulb          q.Temperature  `toml:"dry_bulb"`
	WetBulb          *q.Temperature `toml:"wet_bulb"`
	RelativeHumidity *q.Ratio       `toml:"relative_humidity"`
	Pressure         q.Pressure

	VaporPressure *figure `toml:"vapor_pressure"` // Pa
	HumidityRatio *figure `toml:"humidity_ratio"`
	Enthalpy      *figure // J/kg
	EnthalpyIP    *figure `toml:"enthalpy_ip"` // Btu/lb, from 0 F
	DewPoint      *figure `toml:"dew_point"`   // F
	Found         *figure `toml:"relative_humidity_found"`
	VolumeIP      *figure `toml:"volume_ip"` // ft3/lb
}

func TestWorkedExamples(t *testing.T) {
	var f struct{ Example []example }
	published.Read(t, "examples", &f)
	require.Len(t, f.Example, 7)
	for _, e := range f.Example {
		t.Run(e.ID, func(t *testing.T) { e.check(t) })
	}
}

func (e example) check(t *testing.T) {
	s := e.state(t)
	compare := func(what string, want *figure, got float64) {
		if want != nil {
			assert.InDelta(t, want.Value, got, want.Within, what)
		}
	}
	compare("vapor pressure", e.VaporPressure, float64(s.VaporPressure()))
	compare("humidity ratio", e.HumidityRatio, float64(s.HumidityRatio()))
	compare("enthalpy", e.Enthalpy, float64(s.Enthalpy()))
	compare("enthalpy", e.EnthalpyIP, enthalpyIP(s))
	compare("dew point", e.DewPoint, inFahrenheit(s.DewPoint()))
	compare("relative humidity", e.Found, float64(s.RelativeHumidity()))
	compare("volume", e.VolumeIP, float64(s.SpecificVolume())*0.45359237/(0.3048*0.3048*0.3048))
}

func (e example) state(t *testing.T) State {
	var s State
	var err error
	if e.WetBulb != nil {
		s, err = FromWetBulb(e.DryBulb, *e.WetBulb, e.Pressure)
	} else {
		s, err = FromRelativeHumidity(e.DryBulb, *e.RelativeHumidity, e.Pressure)
	}
	require.NoError(t, err)
	return s
}

// enthalpyIP is h = 0.240 t + W (1061 + 0.444 t) Btu/lb with t in F, whose zero is
// dry air at 0 F.
func enthalpyIP(s State) float64 {
	const btuPerPound, atZeroF = 2326.0, 1006 * (32 / 1.8)
	return (float64(s.Enthalpy()) + atZeroF) / btuPerPound
}
