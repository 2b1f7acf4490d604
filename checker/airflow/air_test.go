package airflow

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/bounds"
	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestStandardAir(t *testing.T) {
	var f struct {
		Standard struct {
			Density            float64
			VelocityPressure   float64 `toml:"velocity_pressure"`
			Reynolds           float64
			ReynoldsIP         float64 `toml:"reynolds_ip"`
			VelocityIP         float64 `toml:"velocity_ip"`
			Viscosity20        float64 `toml:"viscosity_20"`
			FlexibleOverSpiral float64 `toml:"flexible_over_spiral"`
		}
	}
	published.Read(t, "constants", &f)
	air, s := StandardAir(), f.Standard
	assert.Equal(t, s.Density, float64(air.Density))
	assert.InDelta(t, s.VelocityPressure, float64(air.VelocityPressure(1)), 1e-9)
	assert.InEpsilon(t, s.Reynolds, air.Reynolds(1, 0.001), 0.0005)
	assert.InEpsilon(t, s.ReynoldsIP, air.Reynolds(fpm, inch), 0.002)
	assert.InEpsilon(t, inwc, float64(air.VelocityPressure(q.Velocity(s.VelocityIP*fpm))), 0.003)

	at20, err := AirAt(0, 293.15)
	require.NoError(t, err)
	assert.InEpsilon(t, s.Viscosity20, float64(at20.Viscosity), 0.003)
	assert.InEpsilon(t, s.Density, float64(at20.Density), 0.001)

	section := func(roughness q.Length) Section {
		return Section{Shape: round(t, 0.25), Material: rough(roughness), Length: 1}
	}
	ratio := lossOf(t, air, section(0.9*mm), 0.47).Total / lossOf(t, air, section(0.12*mm), 0.47).Total
	assert.InDelta(t, s.FlexibleOverSpiral, float64(ratio), 0.05)
}

// TestAirOfTheStandardAtmosphere compares with python3-fluids.
func TestAirOfTheStandardAtmosphere(t *testing.T) {
	for _, r := range library(t)["air"].Rows {
		air, err := AirAt(q.Length(r[0]), q.Temperature(r[1]))
		require.NoError(t, err)
		assert.InEpsilon(t, r[2], float64(air.Density), 0.001, "at %v m", r[0])
		assert.InEpsilon(t, r[3], float64(air.Viscosity), 0.0001, "at %v m", r[0])
	}
}

// TestElevationFactorOfCharts compares friction at elevation with the factor that
// is used on friction charts.
func TestElevationFactorOfCharts(t *testing.T) {
	var f struct {
		Elevation struct {
			Exponent float64
			PerFoot  float64 `toml:"per_foot"`
			Feet     []float64
			Share    float64
		}
	}
	published.Read(t, "density-factor", &f)
	s := Section{Shape: round(t, 0.15), Material: named(t, "galvanized-steel"), Length: 10}
	ground, err := AirAt(0, 294.26)
	require.NoError(t, err)
	for _, feet := range f.Elevation.Feet {
		air, err := AirAt(q.Length(feet*foot), 294.26)
		require.NoError(t, err)
		want := math.Pow(1-f.Elevation.PerFoot*feet, f.Elevation.Exponent)
		assert.InEpsilon(t, want, float64(lossOf(t, air, s, 0.05).Total/lossOf(t, ground, s, 0.05).Total), f.Elevation.Share, feet)
	}
}

func TestAirOutsideItsRange(t *testing.T) {
	_, err := AirAt(10_000, 293.15)
	assert.ErrorContains(t, err, "elevation")
	_, err = AirAt(0, 20)
	assert.ErrorContains(t, err, "out of range")
	s := Section{Shape: round(t, 0.1), Length: 1}
	for _, air := range []Air{{}, {1.2, 0}, {moistair.Density(math.NaN()), 1.8e-5}, {1.2, Viscosity(math.Inf(1))}} {
		var out *bounds.Error
		_, err := s.Loss(air, 0.01)
		assert.ErrorAs(t, err, &out, air)
	}
	assert.Equal(t, "18.13 uPa s", StandardAir().Viscosity.String())
}

func TestStackPressure(t *testing.T) {
	var f struct {
		Stack struct {
			Rise           q.Length
			Ambient        float64
			Duct, Pressure []float64
			Within         float64
		}
	}
	published.Read(t, "stack", &f)
	require.Len(t, f.Stack.Duct, 3)
	for i, duct := range f.Stack.Duct {
		p, err := StackPressure(moistair.Density(f.Stack.Ambient), moistair.Density(duct), f.Stack.Rise)
		require.NoError(t, err)
		assert.InDelta(t, f.Stack.Pressure[i], float64(p), f.Stack.Within)
	}
	_, err := StackPressure(1.2, 1.1, 200)
	assert.ErrorContains(t, err, "rise")
	_, err = StackPressure(0, 1.1, 2)
	assert.ErrorContains(t, err, "ambient")
}
