package airflow

import (
	"cmp"
	"slices"

	"github.com/ventlint/ventlint/checker/bounds"
	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// FanLaw is a change of one fan in one system: speed and air density, new over old.
// Flow goes with speed; pressure with the square of speed and with density; power
// with the cube of speed and with density. Source: fan laws as homework and course
// pages on fans give them.
type FanLaw struct{ Speed, Density float64 }

// Speed is a change of speed alone, 0.01 to 100.
func Speed(ratio float64) (FanLaw, error) {
	return FanLaw{ratio, 1}, bounds.Check("speed ratio", ratio, 0.01, 100)
}

// Density is a change from the air of a rating, usually StandardAir, to other air;
// both densities are from 0.2 to 2 kg/m3. At elevation a fan moves the same volume
// at less pressure, and so does one that holds its flow up to a limit.
func Density(rated, actual moistair.Density) (FanLaw, error) {
	err := cmp.Or(bounds.Check("rated density", rated, 0.2, 2), bounds.Check("air density", actual, 0.2, 2))
	if err != nil {
		return FanLaw{}, err
	}
	return FanLaw{1, float64(actual / rated)}, nil
}

// Flow is a flow after the change.
func (l FanLaw) Flow(flow q.Flow) q.Flow { return q.Flow(l.Speed) * flow }

// Pressure is a pressure after the change.
func (l FanLaw) Pressure(p q.Pressure) q.Pressure { return q.Pressure(l.Density*l.Speed*l.Speed) * p }

// Power is a shaft power after the change.
func (l FanLaw) Power(p q.Power) q.Power { return q.Power(l.Density*l.Speed*l.Speed*l.Speed) * p }

// Curve is a fan curve after the change, an error where that leaves the range of
// NewCurve.
func (l FanLaw) Curve(c Curve) (Curve, error) {
	points := slices.Clone(c.points)
	for i, p := range points {
		points[i] = Point{l.Flow(p.Flow), l.Pressure(p.Pressure)}
	}
	return NewCurve(points...)
}

// TotalPressure is the rise of total pressure from the inlet to the outlet of a fan
// or unit, by static and velocity pressures of its ports. Source: ASHRAE
// Fundamentals 2021, chapter 21, equation 17.
func TotalPressure(outletStatic, outletVelocity, inletStatic, inletVelocity q.Pressure) q.Pressure {
	return outletStatic + outletVelocity - inletStatic - inletVelocity
}
