package airflow

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/roots"
)

// Gradient is pressure loss along a duct in pascals per metre.
type Gradient float64

// String prints pascals per metre.
func (x Gradient) String() string { return q.Format(float64(x), q.SI) + " Pa/m" }

// SectionLoss is the loss of a section at a flow with every figure on the way:
//
//	V = Q/A, p_v = rho V^2/2, Re = rho V D_h/mu
//	gradient = f p_v/D_h
//	straight = gradient length compression
//	fitted = gradient equivalent length + coefficient p_v
//	total = straight + fitted
type SectionLoss struct {
	Flow              q.Flow
	Velocity          q.Velocity
	VelocityPressure  q.Pressure
	Reynolds          float64
	RelativeRoughness float64 // of the hydraulic diameter
	Friction          Friction
	Gradient          Gradient // of the duct fully stretched
	Compression       Compressed
	Length            q.Length // of duct
	Straight          q.Pressure
	EquivalentLength  q.Length      // of all fittings
	Coefficient       float64       // of all fittings, with MiterFactor
	MiterFactor       float64       // 1 where there is no miter
	Fittings          []FittingLoss // in the order of the section
	Fitted            q.Pressure
	Total             q.Pressure
}

// FittingLoss is the loss of a number of like fittings.
type FittingLoss struct {
	Fitting
	Loss q.Pressure
}

const (
	mostFlow     q.Flow     = 100 // m3/s
	mostVelocity q.Velocity = 100 // m/s: beyond, air is compressed
	mostPressure q.Pressure = 1e5 // Pa
)

// Loss is the loss of total pressure at a flow from 0 to 100 m3/s, by the equations
// of SectionLoss. Source: Darcy-Weisbach, ASHRAE Fundamentals 2021, chapter 21,
// equations 18 and 34. Air faster than 100 m/s is an error.
func (s Section) Loss(air Air, flow q.Flow) (SectionLoss, error) {
	err := cmp.Or(air.check(), s.check(), bounds.Check("flow", flow, 0, mostFlow))
	if err != nil {
		return SectionLoss{}, err
	}
	c := s.conduit(air)
	loss := s.lossAt(&c, max(0, float64(flow)))
	return loss, bounds.Check("velocity", loss.Velocity, 0, mostVelocity)
}

// lossAt adds the single fittings.
func (s Section) lossAt(c *conduit, flow float64) SectionLoss {
	loss := c.at(flow)
	loss.Fittings = slices.Grow(loss.Fittings, len(s.Fittings))
	for _, f := range s.Fittings {
		coefficient := f.Coefficient
		if f.Miter {
			coefficient *= loss.MiterFactor
		}
		each := q.Pressure(coefficient)*loss.VelocityPressure + q.Pressure(float64(loss.Gradient)*float64(f.EquivalentLength))
		loss.Fittings = append(loss.Fittings, FittingLoss{f, q.Pressure(f.Count) * each})
	}
	return loss
}

// Flow is the flow at which a section loses a pressure from 0 to 100 kPa, the
// inverse of Loss. A section without length and fittings has none, and one that
// needs more than 100 m/s is out of range: both are an error.
func (s Section) Flow(air Air, loss q.Pressure) (q.Flow, error) {
	err := cmp.Or(air.check(), s.check(), bounds.Check("loss", loss, 0, mostPressure))
	if err != nil {
		return 0, err
	}
	c := s.conduit(air)
	most := float64(mostVelocity) * c.area
	if high := c.drop(most); high < float64(loss) || high == 0 {
		return 0, fmt.Errorf("loss %q is out of reach, at %v the section loses %q", loss, mostVelocity, q.Pressure(high))
	}
	missing := func(flow float64) float64 { return c.drop(flow) - float64(loss) }
	flow, _ := roots.Find(missing, roots.At(missing, 0), roots.At(missing, most), precision)
	return q.Flow(math.Max(0, flow)), nil
}
