package airflow

import (
	"cmp"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Section is a piece of duct that carries one flow.
type Section struct {
	Shape        Shape
	Material     Material
	Length       q.Length // installed
	Compression  q.Ratio  // of flexible duct: how much shorter than fully extended
	Coefficients float64  // sum of the fittings' coefficients
	Equivalent   q.Length // length of straight duct that stands for further fittings
	Stated       []StatedLoss
}

// StatedLoss is a loss that a maker or a test gives at one flow; at another it
// goes with the square of the flow.
type StatedLoss struct {
	Pressure q.Pressure
	At       q.Flow
}

// Loss is what a section costs at a flow, with every step.
type Loss struct {
	Flow             q.Flow
	Velocity         q.Velocity
	VelocityPressure q.Pressure
	Reynolds         float64
	Factor           float64 // friction factor
	Compressed       float64 // factor on friction for compressed flexible duct; 1 for any other
	Friction         q.Pressure
	Fittings         q.Pressure
	Stated           q.Pressure
	Total            q.Pressure
}

const mostFlow q.Flow = 100

// Loss computes the loss at a flow of 0 to 100 m3/s:
//
//	(f (L + Le)/Dh x PDCF + sum of C) rho V^2/2 + stated losses x (Q/Qs)^2
//
// PDCF = 1 + 0.58 K exp(-0.00496 D), K the compression in percent and D in mm, is
// for flexible duct. Length is 0 to 10 km, compression up to 60 %. Source: ASHRAE
// Fundamentals 2021 chapter 21, equations 18, 22, 23 and 34.
func (s Section) Loss(flow q.Flow, air Air) (Loss, error) {
	if err := s.check(flow); err != nil {
		return Loss{}, err
	}
	d := float64(s.Shape.HydraulicDiameter())
	v := float64(flow) / s.Shape.area
	l := Loss{Flow: flow, Velocity: q.Velocity(v), VelocityPressure: q.Pressure(air.Density * v * v / 2), Compressed: 1}
	l.Reynolds = air.Density * v * d / air.Viscosity
	l.Factor = Factor(l.Reynolds, float64(s.Material.Roughness)/d)
	if s.Material.Flexible {
		l.Compressed = CompressionFactor(s.Compression, q.Length(d))
	}
	l.Friction = q.Pressure(l.Factor*float64(s.Length+s.Equivalent)/d*l.Compressed) * l.VelocityPressure
	l.Fittings = q.Pressure(s.Coefficients) * l.VelocityPressure
	for _, stated := range s.Stated {
		l.Stated += stated.at(flow)
	}
	l.Total = l.Friction + l.Fittings + l.Stated
	return l, nil
}

// CompressionFactor is what compression does to the friction of flexible duct:
// 1 + 0.58 K exp(-0.00496 D), K in percent, D in mm. Source: ASHRAE Fundamentals
// 2021 chapter 21, equation 22; tested for 150 to 250 mm, below that extrapolated.
func CompressionFactor(compression q.Ratio, diameter q.Length) float64 {
	return 1 + 0.58*100*float64(compression)*math.Exp(-0.00496*1000*float64(diameter))
}

func (l StatedLoss) at(flow q.Flow) q.Pressure {
	share := float64(flow / l.At)
	return q.Pressure(float64(l.Pressure) * share * share)
}

func (s Section) check(flow q.Flow) error {
	err := cmp.Or(
		bounds.Check("flow", flow, 0, mostFlow),
		bounds.Check("duct length", s.Length, 0, 10_000),
		bounds.Check("equivalent length", s.Equivalent, 0, 10_000),
		bounds.Check("compression", s.Compression, 0, 0.6),
		bounds.Check("sum of loss coefficients", s.Coefficients, 0, 1000),
		bounds.Check("duct area", s.Shape.Area(), 1e-6, 100))
	for _, stated := range s.Stated {
		err = cmp.Or(err,
			bounds.Check("stated loss", stated.Pressure, 0, 100_000),
			bounds.Check("flow of a stated loss", stated.At, 1e-6, mostFlow))
	}
	return err
}
