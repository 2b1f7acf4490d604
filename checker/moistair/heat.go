package moistair

import (
	"cmp"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// SensibleHeat is what it takes to warm a volume flow of air of a density by a
// temperature difference, P = q rho cp dT with cp = 1006 J/(kg K): 1.21 W per L/s
// and K in standard air, 1.08 Btu/h per cfm and F. Flow is up to 100 m3/s, density
// from 0.3 to 1.8 kg/m3, difference within 200 K; the result has its sign.
func SensibleHeat(flow q.Flow, density Density, difference q.TemperatureDifference) (q.Power, error) {
	err := cmp.Or(
		bounds.Check("flow", flow, 0, 100),
		bounds.Check("air density", density, 0.3, 1.8),
		bounds.Check("temperature difference", difference, -200, 200))
	if err != nil {
		return 0, err
	}
	return q.Power(float64(flow) * float64(density) * airHeat * float64(difference)), nil
}

// PreheatPower is the heat that brings outdoor air to a temperature before the
// core, at constant humidity ratio: P = m (1006 + 1860 W)(T - T_o); 0 where it is
// as warm already. The mass flow is dry air. Source: enthalpy of moist air.
func PreheatPower(outdoor State, m MassFlow, to q.Temperature) (q.Power, error) {
	err := cmp.Or(outdoor.check("outdoor air"), checkMass("supply mass flow", m),
		bounds.Check("preheat temperature", to, Coldest, Hottest))
	if err != nil {
		return 0, err
	}
	rise := max(0, float64(to)-outdoor.dryBulb)
	return q.Power(float64(m) * (airHeat + vaporHeat*outdoor.humidity) * rise), nil
}

// Preheated is outdoor air after a preheater: of the given temperature where it
// was colder, at the same humidity ratio.
func Preheated(outdoor State, to q.Temperature) (State, error) {
	if err := outdoor.check("outdoor air"); err != nil {
		return State{}, err
	}
	return FromHumidityRatio(max(to, outdoor.DryBulb()), outdoor.HumidityRatio(), outdoor.Pressure())
}
