package moistair

import q "github.com/ventlint/ventlint/checker/quantity"

// Quantities of moist air that a design file never states. Like those of
// package quantity they hold coherent SI.
type (
	// HumidityRatio is kilograms of water vapor per kilogram of dry air.
	HumidityRatio float64
	// Enthalpy is in joules per kilogram of dry air, 0 for dry air at 0 C.
	Enthalpy float64
	// SpecificVolume is in cubic metres of moist air per kilogram of dry air.
	SpecificVolume float64
	// Density is in kilograms of moist air per cubic metre.
	Density float64
	// MassFlow is in kilograms per second, of dry air or of water as stated.
	MassFlow float64
)

// String prints grams per kilogram of dry air.
func (x HumidityRatio) String() string { return number(1000*float64(x)) + " g/kg" }

// String prints kilojoules per kilogram of dry air.
func (x Enthalpy) String() string { return number(float64(x)/1000) + " kJ/kg" }

// String prints cubic metres per kilogram of dry air.
func (x SpecificVolume) String() string { return number(float64(x)) + " m3/kg" }

// String prints kilograms per cubic metre.
func (x Density) String() string { return number(float64(x)) + " kg/m3" }

// String prints grams per second.
func (x MassFlow) String() string { return number(1000*float64(x)) + " g/s" }

func number(x float64) string { return q.Format(x, q.SI) }
