package airflow

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Point is a flow that a fan moves and the pressure that it makes then.
type Point struct {
	Flow     q.Flow
	Pressure q.Pressure
}

// Curve is what a fan does at one speed in air of one density: straight lines
// between points. Its pressure is the rise of total pressure between the ports of
// the unit; a listed external static pressure is that where both ports have one
// size, else see TotalPressure. NewCurve and HoldsFlow make one.
type Curve struct{ points []Point }

var errNoCurve = errors.New("fan curve is not given, expected 2 or more points of flow and pressure")

// CurveError is two points in an order that no fan has.
type CurveError struct{ Before, After Point }

// Error quotes both points, in SI.
func (e *CurveError) Error() string {
	return fmt.Sprintf("fan curve goes from %q at %q to %q at %q, expected rising flow at falling pressure; leave out the points before the highest pressure",
		e.Before.Pressure, e.Before.Flow, e.After.Pressure, e.After.Flow)
}

// NewCurve takes 2 to 1000 points in order: flow from 0 to 100 m3/s never falls,
// pressure from 0 to 10 kPa never rises, and one of the two changes. Points on the
// rising side of a hump must be left out: a fan does not run steadily there.
func NewCurve(points ...Point) (Curve, error) {
	if len(points) < 2 || len(points) > 1000 {
		return Curve{}, fmt.Errorf("fan curve has %d points, expected 2 to 1000", len(points))
	}
	for i, p := range points {
		err := cmp.Or(bounds.Check("flow of a fan", p.Flow, 0, mostFlow), bounds.Check("pressure of a fan", p.Pressure, 0, 10_000))
		if err != nil {
			return Curve{}, err
		}
		if i > 0 && !follows(points[i-1], p) {
			return Curve{}, &CurveError{points[i-1], p}
		}
	}
	return Curve{slices.Clone(points)}, nil
}

func follows(a, b Point) bool {
	return b.Flow >= a.Flow && b.Pressure <= a.Pressure && a != b
}

// HoldsFlow is the curve of a unit that keeps its flow up to a limit of pressure.
// What it does beyond is not known.
func HoldsFlow(flow q.Flow, limit q.Pressure) (Curve, error) {
	return NewCurve(Point{flow, limit}, Point{flow, 0})
}

// Points gives the points of the curve in order.
func (c Curve) Points() []Point { return slices.Clone(c.points) }

// PressureAt is the pressure at a flow, the highest where there is a choice. Flows
// outside the curve give a *bounds.Error.
func (c Curve) PressureAt(flow q.Flow) (q.Pressure, error) {
	low, high := c.ends()
	if err := cmp.Or(c.given(), bounds.Check("flow on the fan curve", flow, low.Flow, high.Flow)); err != nil {
		return 0, err
	}
	flow = bounds.Clamp(flow, low.Flow, high.Flow)
	i, found := slices.BinarySearchFunc(c.points, flow, func(p Point, flow q.Flow) int { return cmp.Compare(p.Flow, flow) })
	if found {
		return c.points[i].Pressure, nil
	}
	a, b := c.points[i-1], c.points[i]
	return c.between(i, float64((flow-a.Flow)/(b.Flow-a.Flow))).Pressure, nil
}

// FlowAt is the flow at a pressure, the least where there is a choice. Pressures
// outside the curve give a *bounds.Error.
func (c Curve) FlowAt(pressure q.Pressure) (q.Flow, error) {
	high, low := c.ends()
	if err := cmp.Or(c.given(), bounds.Check("pressure on the fan curve", pressure, low.Pressure, high.Pressure)); err != nil {
		return 0, err
	}
	pressure = bounds.Clamp(pressure, low.Pressure, high.Pressure)
	i, found := slices.BinarySearchFunc(c.points, pressure, func(p Point, pressure q.Pressure) int { return cmp.Compare(pressure, p.Pressure) })
	if found {
		return c.points[i].Flow, nil
	}
	a, b := c.points[i-1], c.points[i]
	return c.between(i, float64((a.Pressure-pressure)/(a.Pressure-b.Pressure))).Flow, nil
}

// between is the place on the line that leads to point i.
func (c Curve) between(i int, share float64) Point {
	a, b := c.points[i-1], c.points[i]
	return Point{a.Flow + q.Flow(share)*(b.Flow-a.Flow), a.Pressure + q.Pressure(share)*(b.Pressure-a.Pressure)}
}

// ends are the first and the last point.
func (c Curve) ends() (first, last Point) {
	if len(c.points) == 0 {
		return
	}
	return c.points[0], c.points[len(c.points)-1]
}

func (c Curve) given() error {
	if len(c.points) == 0 {
		return errNoCurve
	}
	return nil
}
