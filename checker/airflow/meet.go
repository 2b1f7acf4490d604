package airflow

import (
	"cmp"
	"math"

	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/roots"
)

// precision is that of flows that a search finds, as a share.
const precision = 1e-13

// Meeting is where the system curve passes a fan curve.
type Meeting string

// The meetings.
const (
	OnCurve     Meeting = "on the fan curve"
	AboveCurve  Meeting = "above the fan curve"  // the system needs more at the curve's least flow than the fan makes
	BeyondCurve Meeting = "beyond the fan curve" // the system needs less at the curve's largest flow than the fan makes
)

// Operation is what a fan delivers through a system.
//
// OnCurve, Flow and Pressure are the operating point, and Losses gives those of it.
// Else there is no operating point that the curve tells of: Flow and Pressure are zero,
// and Losses gives those at the end of the curve that is nearer. The flow through the
// fan is from Least to Most in each case.
type Operation struct {
	Meeting     Meeting
	Flow        q.Flow
	Pressure    q.Pressure
	Least, Most q.Flow // equal to Flow on the curve; 0 and infinity where nothing is known
	Losses      func() *Losses
	Steps       int // evaluations of the system curve
}

// Shortfall is by how much a fan stays under a flow that is wanted of it, from
// least to most; both are equal on the curve.
func (o *Operation) Shortfall(wanted q.Flow) (least, most q.Flow) {
	return max(0, wanted-o.Most), max(0, wanted-o.Least)
}

// MeetDamped finds the operating point with dampers that keep the proportions of the
// design. Flows are as for Design; at least one is above 0.
func (s *System) MeetDamped(fan Curve, flows Flows) (*Operation, error) {
	d, err := s.damped(flows)
	if err != nil {
		return nil, err
	}
	return meet(fan, d.pressure, d.losses)
}

// MeetOpen finds the operating point without dampers; errors are those of Open.
func (s *System) MeetOpen(fan Curve) (*Operation, error) {
	n, err := s.open()
	if err != nil {
		return nil, err
	}
	return meet(fan, n.pressure, func(total q.Flow) (func() *Losses, error) {
		losses, err := s.Open(total)
		return func() *Losses { return losses }, err
	})
}

// meet walks along the fan curve, on which the pressure missing to the system never
// falls.
func meet(fan Curve, system func(total float64) (float64, error), losses func(q.Flow) (func() *Losses, error)) (*Operation, error) {
	if err := fan.given(); err != nil {
		return nil, err
	}
	o := &Operation{}
	var failed error
	missing := func(p Point) float64 {
		o.Steps++
		needed, err := system(float64(p.Flow))
		failed = cmp.Or(failed, err)
		return needed - float64(p.Pressure)
	}
	at := o.find(fan, missing)
	if failed != nil {
		return nil, failed
	}
	var err error
	o.Losses, err = losses(at.Flow)
	return o, err
}

// find settles where the curves meet, and gives the point of the fan curve that is
// there or nearest.
func (o *Operation) find(fan Curve, missing func(Point) float64) Point {
	first, last := fan.ends()
	beside := func(p Point, missing float64) int { return q.Compare(missing+float64(p.Pressure), float64(p.Pressure)) }
	atFirst := missing(first)
	if beside(first, atFirst) > 0 {
		o.Meeting, o.Most = AboveCurve, first.Flow
		return first
	}
	atLast := missing(last)
	if beside(last, atLast) < 0 {
		o.Meeting, o.Least, o.Most = BeyondCurve, last.Flow, q.Flow(math.Inf(1))
		return last
	}
	at := fan.cross(missing, atFirst, atLast)
	o.Meeting, o.Flow, o.Pressure, o.Least, o.Most = OnCurve, at.Flow, at.Pressure, at.Flow, at.Flow
	return at
}

// cross finds the point where nothing is missing, first the line, then the place. What
// is missing at the ends of the curve is known.
func (c Curve) cross(missing func(Point) float64, atLow, atHigh float64) Point {
	low, high := 0, len(c.points)-1
	for high-low > 1 {
		middle := (low + high) / 2
		if m := missing(c.points[middle]); m < 0 {
			low, atLow = middle, m
		} else {
			high, atHigh = middle, m
		}
	}
	share, _ := roots.Find(func(share float64) float64 { return missing(c.between(high, share)) }, roots.Spot{X: 0, Y: atLow}, roots.Spot{X: 1, Y: atHigh}, precision)
	return c.between(high, share)
}
