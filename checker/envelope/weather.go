package envelope

import (
	"cmp"
	"fmt"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Shelter is how wind reaches a house, from 1 (open country) to 5 (built up on
// all sides).
type Shelter int

// Weather is what drives air through an envelope at one hour.
type Weather struct {
	Difference q.TemperatureDifference // between indoors and outdoors, of either sign, within 100 K
	Wind       q.Velocity              // at the weather station, 0 to 50 m/s
}

// stackCoefficient is Cs in (L/s)^2/(cm4 K), windCoefficient Cw in
// (L/s)^2/(cm4 (m/s)^2) by shelter, both by storeys.
var (
	stackCoefficient = [...]float64{0.000145, 0.000290}
	windCoefficient  = [...][5]float64{
		{0.000319, 0.000246, 0.000174, 0.000104, 0.000032},
		{0.000420, 0.000325, 0.000231, 0.000137, 0.000042},
	}
)

// WeatherInfiltration is the flow that wind and temperature drive through an
// effective leakage area at one hour:
//
//	Q[m3/s] = (A[cm2]/1000) sqrt(Cs |dT[K]| + Cw U[m/s]^2)
//
// for one or two storeys; the wind coefficients of three could not be read.
// Source: the basic residential model of ASHRAE Fundamentals, from memory.
func WeatherInfiltration(ela q.Area, storeys int, shelter Shelter, w Weather) (q.Flow, error) {
	if storeys < 1 || storeys > len(stackCoefficient) {
		return 0, fmt.Errorf("weather infiltration of %q storeys is not known, expected 1 or 2", fmt.Sprint(storeys))
	}
	err := cmp.Or(
		bounds.Check("leakage area", ela, 0, 10),
		bounds.Check("shelter class", float64(shelter), 1, 5),
		bounds.Check("temperature difference", w.Difference, -100, 100),
		bounds.Check("wind speed", w.Wind, 0, 50))
	if err != nil {
		return 0, err
	}
	stack := stackCoefficient[storeys-1] * math.Abs(float64(w.Difference))
	wind := windCoefficient[storeys-1][shelter-1] * float64(w.Wind*w.Wind)
	const squareCentimetres = 1e4
	return q.Flow(float64(ela) * squareCentimetres / 1000 * math.Sqrt(stack+wind)), nil
}
