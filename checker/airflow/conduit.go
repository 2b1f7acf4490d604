package airflow

import (
	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// conduit is a section made ready for many flows.
type conduit struct {
	air         Air
	area        float64
	diameter    float64 // hydraulic
	roughness   float64 // relative
	length      float64
	compressed  Compressed
	equivalent  float64 // length of fittings
	coefficient float64 // sum of those that do not depend on the flow
	miters      float64 // sum of those that do
}

// conduit takes a section that has been checked.
func (s Section) conduit(air Air) conduit {
	d := s.Shape.HydraulicDiameter()
	c := conduit{air: air, area: float64(s.Shape.Area()), diameter: float64(d), length: float64(max(0, s.Length)), compressed: Compressed{Factor: 1}}
	c.roughness = bounds.Clamp(float64(s.Material.Roughness/d), 0, mostRoughness)
	if s.Compression > 0 {
		c.compressed, _ = CompressionFactor(d, s.Compression)
	}
	for _, f := range s.Fittings {
		n := float64(f.Count)
		c.equivalent += n * float64(f.EquivalentLength)
		if f.Miter {
			c.miters += n * f.Coefficient
		} else {
			c.coefficient += n * f.Coefficient
		}
	}
	return c
}

// noFlow is so little, in m3/s, that its figures would leave the range of numbers.
const noFlow = 1e-100

// at gives all figures of the loss at a flow of zero or more but the single
// fittings.
func (c *conduit) at(flow float64) SectionLoss {
	v := flow / c.area
	loss := SectionLoss{Flow: q.Flow(flow), Velocity: q.Velocity(v), RelativeRoughness: c.roughness, Compression: c.compressed,
		Length: q.Length(c.length), EquivalentLength: q.Length(c.equivalent), MiterFactor: 1}
	if flow < noFlow {
		return loss
	}
	pressure := float64(c.air.VelocityPressure(loss.Velocity))
	loss.VelocityPressure = q.Pressure(pressure)
	loss.Reynolds = c.air.Reynolds(loss.Velocity, q.Length(c.diameter))
	loss.Friction = friction(loss.Reynolds, c.roughness)
	loss.Gradient = Gradient(loss.Friction.Factor / c.diameter * pressure)
	loss.Straight = q.Pressure(float64(loss.Gradient) * c.compressed.Factor * c.length)
	if c.miters != 0 {
		loss.MiterFactor = MiterFactor(loss.Reynolds)
	}
	loss.Coefficient = max(0, c.coefficient+c.miters*loss.MiterFactor)
	loss.Fitted = q.Pressure(float64(loss.Gradient)*c.equivalent + loss.Coefficient*pressure)
	loss.Total = loss.Straight + loss.Fitted
	return loss
}

// drop is the loss at a flow of zero or more.
func (c *conduit) drop(flow float64) float64 { return float64(c.at(flow).Total) }
