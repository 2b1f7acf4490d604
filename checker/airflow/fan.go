package airflow

import (
	"errors"
	"fmt"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// FanPoint is one point of a fan curve at standard air.
type FanPoint struct {
	Flow     q.Flow
	Pressure q.Pressure
}

// Fan is a fan curve: straight lines between points of rising flow and pressure
// that never rises. A unit whose motor holds a flow up to a pressure is such a
// curve, too.
type Fan struct{ points []FanPoint }

// NewFan makes a curve of at least two points.
func NewFan(points []FanPoint) (Fan, error) {
	if len(points) < 2 {
		return Fan{}, errors.New("a fan curve of fewer than two points")
	}
	for i, p := range points {
		if p.Flow < 0 || p.Pressure < 0 {
			return Fan{}, fmt.Errorf("point %d of the fan curve is negative", i+1)
		}
		if i > 0 && (p.Flow < points[i-1].Flow || p.Pressure > points[i-1].Pressure) {
			return Fan{}, fmt.Errorf("point %d of the fan curve: expected more flow at less pressure than the point before", i+1)
		}
	}
	return Fan{points}, nil
}

// Pressure is what the fan gives at a flow: that of the first point below the
// curve, and that of the last beyond it.
func (f Fan) Pressure(flow q.Flow) q.Pressure {
	if flow <= f.points[0].Flow {
		return f.points[0].Pressure
	}
	for i, p := range f.points[1:] {
		if before := f.points[i]; flow <= p.Flow && p.Flow > before.Flow {
			share := (flow - before.Flow) / (p.Flow - before.Flow)
			return before.Pressure + (p.Pressure-before.Pressure)*q.Pressure(share)
		}
	}
	return f.points[len(f.points)-1].Pressure
}

// Meeting is how a fan curve meets a system.
type Meeting string

// The ways of meeting.
const (
	OnCurve     Meeting = "on the curve"
	BelowCurve  Meeting = "below the first point of the curve: the system resists more than the fan is rated for"
	BeyondCurve Meeting = "beyond the last point of the curve: the system resists less than the fan is rated for"
)

// Point is where a fan works. Outside the curve the flow is that of the curve's
// end, which is all that is known.
type Point struct {
	Flow     q.Flow
	Pressure q.Pressure // that the system asks at this flow
	Meeting  Meeting
}

// Operate finds where a fan meets a system whose loss never falls with the flow.
// The pressure of the fan goes with the density of the air.
func (f Fan) Operate(loss func(q.Flow) (q.Pressure, error), air Air) (Point, error) {
	first, last := f.points[0].Flow, f.points[len(f.points)-1].Flow
	var failed error
	excess := func(flow float64) float64 {
		p, err := loss(q.Flow(flow))
		if err != nil && failed == nil {
			failed = err
		}
		return float64(p) - float64(f.Pressure(q.Flow(flow)))*air.Density/StandardAir().Density
	}
	meeting := OnCurve
	switch {
	case excess(float64(first)) > 0:
		meeting = BelowCurve
	case excess(float64(last)) < 0:
		meeting = BeyondCurve
	}
	flow := q.Flow(root(float64(first), float64(last), excess))
	if failed != nil {
		return Point{}, failed
	}
	p, err := loss(flow)
	return Point{flow, p, meeting}, err
}
