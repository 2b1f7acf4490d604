package moistair

import q "github.com/ventlint/ventlint/checker/quantity"

// Condensate is water that has left the air, in kilograms per second.
type Condensate struct{ Liquid, Ice MassFlow }

// Total is liquid and ice together.
func (c Condensate) Total() MassFlow { return c.Liquid + c.Ice }

// WaterEnthalpy is that of liquid water in J/kg, h = 4186 t, t in C: the datum
// and heat of the wet bulb equation.
func WaterEnthalpy(t q.Temperature) Enthalpy { return Enthalpy(waterEnthalpy(float64(t))) }

// IceEnthalpy is that of ice in J/kg, h = -329000 + 2100 t, t in C: the datum
// and heat of the wet bulb equation below 0 C. Its heat of fusion is 1.4 % below
// the measured 333.6 kJ/kg.
func IceEnthalpy(t q.Temperature) Enthalpy { return Enthalpy(iceEnthalpy(float64(t))) }

func waterEnthalpy(t float64) float64 { return waterHeat * (t - freezing) }

func iceEnthalpy(t float64) float64 { return evaporation - sublimation + iceHeat*(t-freezing) }

// fog is a kilogram of dry air with all its water, some of it perhaps condensed.
type fog struct {
	temperature, vapor, liquid, ice float64
}

// settle lets water condense from air of a given enthalpy and total water until
// what remains is just saturated, without heat from outside. The heat of the
// condensate warms the air; at 0 C water and ice may lie side by side.
func settle(h, water, p float64) fog {
	dry := temperatureOf(h, water)
	if water <= saturatedRatio(dry, p) {
		return fog{temperature: dry, vapor: water}
	}
	dew := saturatedAt(vaporOf(water, p))
	vapor := saturatedRatio(freezing, p)
	ice := (h - enthalpy(freezing, vapor)) / iceEnthalpy(freezing) // if all stood at 0 C
	switch condensed := water - vapor; {
	case condensed <= 0 || ice > condensed:
		t := saturatedAtEnthalpy(dry, min(dew, freezing), h, water, p, iceEnthalpy)
		return fog{temperature: t, vapor: saturatedRatio(t, p), ice: max(0, water-saturatedRatio(t, p))}
	case ice < 0:
		t := saturatedAtEnthalpy(max(dry, freezing), dew, h, water, p, waterEnthalpy)
		return fog{temperature: t, vapor: saturatedRatio(t, p), liquid: max(0, water-saturatedRatio(t, p))}
	default:
		return fog{freezing, vapor, condensed - ice, ice}
	}
}

// saturatedAtEnthalpy is the temperature between low and high at which saturated
// air with the rest of the water condensed has the enthalpy h.
func saturatedAtEnthalpy(low, high, h, water, p float64, condensed func(t float64) float64) float64 {
	return crossing(low, high, func(t float64) bool {
		vapor := saturatedRatio(t, p)
		return enthalpy(t, vapor)+(water-vapor)*condensed(t) <= h
	})
}
