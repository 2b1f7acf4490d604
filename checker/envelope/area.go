package envelope

import (
	"math"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// referenceDensity is that of the air at which leakage areas are stated, 20 C at
// sea level, in kg/m3.
const referenceDensity = 1.2041

// EffectiveArea is the effective leakage area at 4 Pa with discharge coefficient
// 1, ELA = Q4/sqrt(2 x 4 Pa/1.2041 kg/m3): 0.0550 in2 per cfm at 50 Pa when n is
// 0.65. Source: ASHRAE 62.2 and ASTM E779, from memory.
func (l Leakage) EffectiveArea() q.Area { return l.area(4, 1) }

// EquivalentArea is the equivalent leakage area at 10 Pa with discharge
// coefficient 0.611 of Canadian test reports: 0.103 in2 per cfm at 50 Pa when n is
// 0.65. Source: CGSB 149.10, from memory.
func (l Leakage) EquivalentArea() q.Area { return l.area(10, 0.611) }

func (l Leakage) area(p, discharge float64) q.Area {
	return q.Area(l.at(p) / (discharge * math.Sqrt(2*p/referenceDensity)))
}
