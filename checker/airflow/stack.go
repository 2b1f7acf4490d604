package airflow

import (
	"cmp"

	"github.com/ventlint/ventlint/checker/bounds"
	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// StackPressure is the pressure that a column of duct air gains against the air
// around it, 9.81 (rho_ambient - rho_duct) h, positive where it helps air upward.
// The rise h is from -100 m to 100 m, densities from 0.2 to 2 kg/m3. No System
// counts it. Source: ASHRAE Fundamentals 2021, chapter 21, equation 14.
func StackPressure(ambient, duct moistair.Density, rise q.Length) (q.Pressure, error) {
	err := cmp.Or(
		bounds.Check("density of ambient air", ambient, 0.2, 2),
		bounds.Check("density of duct air", duct, 0.2, 2),
		bounds.Check("rise", rise, -100, 100))
	if err != nil {
		return 0, err
	}
	return q.Pressure(9.81 * float64(ambient-duct) * float64(rise)), nil
}
