package quantity

// The quantities of a ventilation design. Each holds its value in coherent SI,
// so that a pack that compares a length with a flow does not compile.
type (
	// Length is in metres.
	Length float64
	// Area is in square metres.
	Area float64
	// Volume is in cubic metres.
	Volume float64
	// Flow is volume flow in cubic metres per second.
	Flow float64
	// Velocity is in metres per second; a flow per floor area has the same dimension.
	Velocity float64
	// Pressure is in pascals.
	Pressure float64
	// Temperature is in kelvins on the absolute scale; two of them have no sum.
	Temperature float64
	// TemperatureDifference is in kelvins.
	TemperatureDifference float64
	// Power is in watts; heat input of an appliance included.
	Power float64
	// Duration is in seconds.
	Duration float64
	// AirChange is a flow per volume, in changes per second.
	AirChange float64
	// Efficacy is flow per electric power, in cubic metres per second per watt.
	Efficacy float64
	// Ratio is a pure share: 65 % is 0.65.
	Ratio float64
	// ThermalResistance is in square metre kelvins per watt.
	ThermalResistance float64
	// Loudness is in sones.
	Loudness float64
	// SoundLevel is in A-weighted decibels.
	SoundLevel float64
	// Slope is rise over run.
	Slope float64
	// Mass is in kilograms.
	Mass float64
)

// System is the unit system in which quantities are printed.
type System int

// The two unit systems of reports.
const (
	IP    System = iota // feet, cfm, inches of water
	SI                  // metres, litres per second, pascals
	house               // IP, but with pascals
)

// House is the system for what is about the pressure of a house, which is told in
// pascals everywhere; all else stays as it is.
func (s System) House() System {
	if s == IP {
		return house
	}
	return s
}

// String gives "IP" or "SI".
func (s System) String() string {
	if s == SI {
		return "SI"
	}
	return "IP"
}
