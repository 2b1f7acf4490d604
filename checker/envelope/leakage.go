package envelope

import (
	"cmp"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// DefaultExponent is the exponent of a leakage whose test did not give one.
// Source: ANSI/RESNET/ICC 380, from memory.
const DefaultExponent = 0.65

const (
	leastExponent = 0.5 // an orifice
	mostExponent  = 1.0 // laminar flow

	testPressure q.Pressure = 50
	leastFlow50  q.Flow     = 1e-4 // 0.1 L/s: no dwelling is tighter
	mostFlow     q.Flow     = 100  // m3/s, of any flow here
	mostPressure q.Pressure = 10_000
)

// Leakage is the airtightness of an envelope: Q = C dP^n. Only the From functions
// make one; the zero Leakage is none, and flows and pressures of it are an error. Source: ASHRAE
// Fundamentals, ASTM E779 and E1827, from memory.
type Leakage struct {
	flow50   float64 // m3/s
	exponent float64
}

// FromFlow50 is leakage by its flow at 50 Pa, 0.1 L/s to 100 m3/s, and its
// exponent, 0.5 to 1: C = Q50/50^n. Codes test with continuous ventilation
// sealed, so leakage through a ventilator's openings is not in Q50.
func FromFlow50(flow50 q.Flow, exponent float64) (Leakage, error) {
	if err := cmp.Or(checkFlow50(flow50), checkExponent(exponent)); err != nil {
		return Leakage{}, err
	}
	return Leakage{float64(flow50), bounds.Clamp(exponent, leastExponent, mostExponent)}, nil
}

// FromAirChanges50 is leakage by its air changes at 50 Pa, over 0 to 100 per hour,
// in a volume of 1 m3 to 100 000 m3: Q50 = ACH50 V.
func FromAirChanges50(changes q.AirChange, volume q.Volume, exponent float64) (Leakage, error) {
	err := cmp.Or(
		bounds.Check("air change rate at 50 Pa", changes, 0, 100.0/3600),
		checkVolume(volume))
	if err != nil {
		return Leakage{}, err
	}
	return FromFlow50(q.Flow(float64(changes)*float64(volume)), exponent)
}

// Flow50 is the flow at 50 Pa.
func (l Leakage) Flow50() q.Flow { return q.Flow(l.flow50) }

// Exponent is n, without a unit.
func (l Leakage) Exponent() float64 { return l.exponent }

// Coefficient is C = Q50/50^n, in m3/s per Pa^n.
func (l Leakage) Coefficient() float64 { return l.flow50 / math.Pow(float64(testPressure), l.exponent) }

// AirChanges50 is the air change rate at 50 Pa of a volume of 1 m3 to 100 000 m3.
func (l Leakage) AirChanges50(volume q.Volume) (q.AirChange, error) {
	if err := checkVolume(volume); err != nil {
		return 0, err
	}
	return q.AirChange(l.flow50 / float64(volume)), nil
}

func checkFlow50(flow q.Flow) error {
	return bounds.Check("leakage flow at 50 Pa", flow, leastFlow50, mostFlow)
}

func checkExponent(n float64) error {
	return bounds.Check("leakage exponent", n, leastExponent, mostExponent)
}

func checkVolume(v q.Volume) error { return bounds.Check("volume", v, 1, 100_000) }

func checkFlow(what string, flow q.Flow) error { return bounds.Check(what, flow, 0, mostFlow) }
