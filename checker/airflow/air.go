package airflow

import (
	"cmp"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Viscosity is dynamic viscosity in pascal seconds.
type Viscosity float64

// String prints micropascal seconds.
func (x Viscosity) String() string { return q.Format(1e6*float64(x), q.SI) + " uPa s" }

// Air is what the losses of ducts depend on: density, 0.2 to 2 kg/m3, and dynamic
// viscosity, 5 to 50 uPa s.
type Air struct {
	Density   moistair.Density
	Viscosity Viscosity
}

// StandardAir is the air of airflow ratings and friction charts: 1.204 kg/m3, and
// the viscosity behind Re = 66.4 D V with D in mm. Source: ASHRAE Fundamentals
// 2021, chapter 21, text of equation 9 and equation 21.
func StandardAir() Air { return Air{1.204, 1.813e-5} }

// AirAt is dry air of a temperature, -70 C to 60 C, at an elevation, -1000 m to
// 9000 m, in the standard atmosphere. Density is p/(R T), see moistair.AirDensity; viscosity is
// Sutherland's law, 1.458e-6 T^1.5/(T + 110.4) Pa s, with the constants of the
// U.S. Standard Atmosphere 1976. Humid air is lighter by less than 1 % in houses.
func AirAt(elevation q.Length, t q.Temperature) (Air, error) {
	density, err := moistair.AirDensity(elevation, t)
	if err != nil {
		return Air{}, err
	}
	kelvin := float64(t)
	return Air{density, Viscosity(1.458e-6 * math.Pow(kelvin, 1.5) / (kelvin + 110.4))}, nil
}

// VelocityPressure is rho V^2/2 of a velocity V. Source: ASHRAE Fundamentals 2021,
// chapter 21, equation 8.
func (a Air) VelocityPressure(v q.Velocity) q.Pressure {
	return q.Pressure(float64(a.Density) * float64(v) * float64(v) / 2)
}

// Reynolds is the Reynolds number rho V D/mu of a velocity V in a duct of hydraulic
// diameter D.
func (a Air) Reynolds(v q.Velocity, diameter q.Length) float64 {
	return float64(a.Density) * float64(v) * float64(diameter) / float64(a.Viscosity)
}

func (a Air) check() error {
	return cmp.Or(
		bounds.Check("air density", a.Density, 0.2, 2),
		bounds.Check("air viscosity", a.Viscosity, 5e-6, 5e-5))
}
