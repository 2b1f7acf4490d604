package moistair

import (
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// SeaLevelPressure is that of the standard atmosphere.
const SeaLevelPressure q.Pressure = 101_325

const (
	lowestPlace  q.Length = -1_000
	highestPlace q.Length = 9_000
)

// StationPressure is the air pressure of the standard atmosphere at an elevation
// Z above the sea, p = 101325 (1 - 2.25577E-5 Z)^5.2559 Pa with Z in metres, here
// from -1000 m to 9000 m. Source: the standard atmosphere as ASHRAE Fundamentals,
// chapter 1, gives it (from memory; its form in feet was read in tables).
func StationPressure(elevation q.Length) (q.Pressure, error) {
	if err := checkPlace(elevation); err != nil {
		return 0, err
	}
	return SeaLevelPressure * q.Pressure(math.Pow(1-2.25577e-5*float64(elevation), 5.2559)), nil
}

// StandardTemperature is the air temperature of the standard atmosphere at an
// elevation Z in metres, T = 288.15 - 0.0065 Z K (59 - 0.0035662 Z F with Z in
// feet), here from -1000 m to 9000 m.
func StandardTemperature(elevation q.Length) (q.Temperature, error) {
	if err := checkPlace(elevation); err != nil {
		return 0, err
	}
	return q.Temperature(288.15 - 0.0065*float64(elevation)), nil
}

// AirDensity is that of dry air of a temperature at the standard pressure of an
// elevation, p/(287.042 T). Ducts and fans seldom need more; State.Density takes
// humidity into account.
func AirDensity(elevation q.Length, t q.Temperature) (Density, error) {
	p, err := StationPressure(elevation)
	if err != nil {
		return 0, err
	}
	dry, err := FromHumidityRatio(t, 0, p)
	return dry.Density(), err
}

func checkPlace(elevation q.Length) error {
	return bounds.Check("elevation", elevation, lowestPlace, highestPlace)
}
