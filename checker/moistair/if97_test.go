package moistair

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// iapws is the file of check values, with the coefficients of two equations that
// are not ours.
type iapws struct {
	Water, Boiling, Ice []struct{ Temperature, Pressure float64 }
	Sublimation         struct{ A, B []float64 }
	Region4             struct{ N []float64 }
}

func readIAPWS(t *testing.T) (f iapws) {
	t.Helper()
	published.Read(t, "iapws", &f)
	require.Len(t, f.Water, 3)
	require.Len(t, f.Boiling, 3)
	require.Len(t, f.Ice, 1)
	return f
}

// water is R7-97 equation 30, in Pa.
func (f iapws) water(t float64) float64 {
	n := f.Region4.N
	th := t + n[8]/(t-n[9])
	a := th*th + n[0]*th + n[1]
	b := n[2]*th*th + n[3]*th + n[4]
	c := n[5]*th*th + n[6]*th + n[7]
	return 1e6 * math.Pow(2*c/(-b+math.Sqrt(b*b-4*a*c)), 4)
}

// ice is R14-08 equation 6, in Pa.
func (f iapws) ice(t float64) float64 {
	th, sum := t/273.16, 0.0
	for i, a := range f.Sublimation.A {
		sum += a * math.Pow(th, f.Sublimation.B[i])
	}
	return 611.657 * math.Exp(sum/th)
}

// TestOracleMeetsItsCheckValues shows that the second routines are right before
// anything is compared with them.
func TestOracleMeetsItsCheckValues(t *testing.T) {
	f := readIAPWS(t)
	for _, c := range f.Water {
		near(t, 1e6*c.Pressure, f.water(c.Temperature), 2e-9)
	}
	for _, c := range f.Boiling {
		near(t, 1e6*c.Pressure, f.water(c.Temperature), 2e-8) // nine digits of temperature
	}
	for _, c := range f.Ice {
		near(t, 1e6*c.Pressure, f.ice(c.Temperature), 1e-6)
	}
}

// TestSaturationAgreesWithIAPWS checks our equations at the published points in
// their range and, by the oracle, between: 0.05 % over water up to 100 C and over
// ice down to -60 C.
func TestSaturationAgreesWithIAPWS(t *testing.T) {
	f := readIAPWS(t)
	near(t, 1e6*f.Water[0].Pressure, saturation(f.Water[0].Temperature), 5e-4)
	near(t, 1e6*f.Ice[0].Pressure, saturation(f.Ice[0].Temperature), 5e-4)
	near(t, f.Boiling[0].Temperature, saturatedAt(1e6*f.Boiling[0].Pressure), 1e-4)
	for k := 273.16; k <= 373.15; k += 0.5 {
		near(t, f.water(k), saturation(k), 5e-4, "water at %g K", k)
	}
	for k := 213.15; k < 273.16; k += 0.5 {
		near(t, f.ice(k), saturation(k), 5e-4, "ice at %g K", k)
	}
}

func TestBothSaturationEquationsMeetAtTheTriplePoint(t *testing.T) {
	ice, water := math.Exp(overIce(triple)), math.Exp(overWater(triple))
	assert.InDelta(t, 611.66, ice, 0.005)
	assert.InDelta(t, 611.66, water, 0.005)
	near(t, ice, water, 1e-5)
}

func TestSaturationTemperatureInvertsSaturationPressure(t *testing.T) {
	for c := -100.0; c <= 200; c += 0.7 {
		p, err := SaturationPressure(celsius(c))
		require.NoError(t, err)
		back, err := SaturationTemperature(p)
		require.NoError(t, err)
		assert.InDelta(t, c, inCelsius(back), 1e-9)
	}
}

func TestSaturationRefusesWhatLiesOutside(t *testing.T) {
	for _, c := range []float64{-101, 201, math.NaN(), math.Inf(1)} {
		_, err := SaturationPressure(celsius(c))
		assert.ErrorContains(t, err, "expected -100 C to 200 C")
	}
	for _, p := range []q.Pressure{0, -1, 1e-4, 2e6, q.Pressure(math.NaN())} {
		_, err := SaturationTemperature(p)
		assert.ErrorContains(t, err, "vapor pressure")
	}
}
