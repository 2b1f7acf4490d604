package moistair

import q "github.com/ventlint/ventlint/checker/quantity"

const (
	gasConstant = 287.042  // J/(kg K), of dry air
	volumeRatio = 1.607858 // molar mass of dry air over that of water

	airHeat     = 1006.0      // J/(kg K), of dry air
	vaporHeat   = 1860.0      // J/(kg K)
	waterHeat   = 4186.0      // J/(kg K)
	iceHeat     = 2100.0      // J/(kg K)
	evaporation = 2_501_000.0 // J/kg, at 0 C
	sublimation = 2_830_000.0 // J/kg, at 0 C
)

// DryBulb is the temperature of the air.
func (s State) DryBulb() q.Temperature { return q.Temperature(s.dryBulb) }

// HumidityRatio is the water vapor per dry air.
func (s State) HumidityRatio() HumidityRatio { return HumidityRatio(s.humidity) }

// Pressure is the total pressure.
func (s State) Pressure() q.Pressure { return q.Pressure(s.pressure) }

// VaporPressure is the partial pressure of water vapor, pw = p W/(0.621945 + W).
func (s State) VaporPressure() q.Pressure { return q.Pressure(vaporOf(s.humidity, s.pressure)) }

// RelativeHumidity is vapor pressure over saturation pressure at the dry bulb,
// over ice below 0.01 C.
func (s State) RelativeHumidity() q.Ratio {
	if s.pressure == 0 {
		return 0
	}
	return q.Ratio(vaporOf(s.humidity, s.pressure) / saturation(s.dryBulb))
}

// DewPoint is the temperature at which the vapor would be saturated; below
// 0.01 C it is the frost point. Air with less vapor than ice at -100 C gives off
// has its dew point given as -100 C.
func (s State) DewPoint() q.Temperature {
	return q.Temperature(min(s.dryBulb, saturatedAt(vaporOf(s.humidity, s.pressure))))
}

// Enthalpy is h = 1006 t + W (2501000 + 1860 t) J/kg, t in C: perfect gases, by
// ASHRAE Fundamentals, chapter 1 (from memory).
func (s State) Enthalpy() Enthalpy {
	if s.pressure == 0 {
		return 0
	}
	return Enthalpy(enthalpy(s.dryBulb, s.humidity))
}

// SpecificVolume is v = 287.042 T (1 + 1.607858 W)/p m3 per kg of dry air:
// perfect gases, by ASHRAE Fundamentals, chapter 1 (from memory).
func (s State) SpecificVolume() SpecificVolume {
	if s.pressure == 0 {
		return 0
	}
	return SpecificVolume(gasConstant * s.dryBulb * (1 + volumeRatio*s.humidity) / s.pressure)
}

// Density is that of the moist air, (1 + W)/v.
func (s State) Density() Density {
	if s.pressure == 0 {
		return 0
	}
	return Density((1 + s.humidity) / float64(s.SpecificVolume()))
}

func enthalpy(t, w float64) float64 {
	c := t - freezing
	return airHeat*c + w*(evaporation+vaporHeat*c)
}

// temperatureOf inverts enthalpy.
func temperatureOf(h, w float64) float64 {
	return freezing + (h-evaporation*w)/(airHeat+vaporHeat*w)
}
