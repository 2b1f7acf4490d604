package moistair

import (
	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// StandardDensity is that of the air by which fans and ventilators are rated:
// 1.204 kg/m3 dry air, in IP 0.075 lb/ft3, which is 0.2 % less. Source: ASHRAE,
// from memory.
const StandardDensity Density = 1.204

const (
	leastMassFlow MassFlow = 1e-4 // kg/s, about 0.1 L/s
	mostMassFlow  MassFlow = 100
)

// MassFlow is the dry air per second in a volume flow of this air, m = q/v; the
// mass flow is from 0.1 g/s to 100 kg/s, some 0.1 L/s to 80 m3/s.
func (s State) MassFlow(flow q.Flow) (MassFlow, error) {
	if err := s.check("air"); err != nil {
		return 0, err
	}
	return checked(MassFlow(float64(flow) / float64(s.SpecificVolume())))
}

// Flow is the volume flow of this air that carries so much dry air, q = m v.
func (s State) Flow(m MassFlow) q.Flow { return q.Flow(float64(m) * float64(s.SpecificVolume())) }

// StandardMassFlow is the dry air per second in a listed flow, m = 1.204 q.
func StandardMassFlow(flow q.Flow) (MassFlow, error) {
	return checked(MassFlow(float64(flow) * float64(StandardDensity)))
}

func checked(m MassFlow) (MassFlow, error) {
	if err := checkMass("air mass flow", m); err != nil {
		return 0, err
	}
	return m, nil
}

func checkMass(what string, m MassFlow) error {
	return bounds.Check(what, m, leastMassFlow, mostMassFlow)
}
