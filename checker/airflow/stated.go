package airflow

import (
	"cmp"
	"fmt"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// StatedLoss is a loss given by its maker at one flow, of a hood, grille, valve,
// filter or coil: Loss (Q/Flow)^Exponent. Loss is from 0 to 100 kPa, Flow from
// 0.01 L/s to 100 m3/s, Exponent from 1 to 2; left zero it is 2. Hoods and grilles
// have 2, filters and coils come near 1. Loss is that in the air of the system; the
// Pressure of a FanLaw of density makes it from a figure for standard air. Source: ASHRAE Fundamentals 2021, chapter
// 21, section 4, that coils and filters depart from the square; the exponents are
// from memory.
type StatedLoss struct {
	Name     string
	Loss     q.Pressure
	Flow     q.Flow
	Exponent float64
}

// StatedResult is a stated loss scaled to a flow.
type StatedResult struct {
	StatedLoss
	At   q.Flow
	Loss q.Pressure
}

// LossAt is the loss at a flow from 0 to 100 m3/s.
func (s StatedLoss) LossAt(flow q.Flow) (q.Pressure, error) {
	if err := cmp.Or(s.check(), bounds.Check("flow", flow, 0, mostFlow)); err != nil {
		return 0, err
	}
	return q.Pressure(s.drop(max(0, float64(flow)))), nil
}

func (s StatedLoss) check() error {
	err := cmp.Or(
		bounds.Check("stated loss", s.Loss, 0, mostPressure),
		bounds.Check("flow of a stated loss", s.Flow, 1e-5, mostFlow),
		bounds.Check("exponent of a stated loss", s.exponent(), 1, 2))
	if err != nil {
		return fmt.Errorf("%q: %w", s.Name, err)
	}
	return nil
}

// drop is the loss at a flow of zero or more.
func (s StatedLoss) drop(flow float64) float64 {
	return max(0, float64(s.Loss)) * math.Pow(flow/float64(s.Flow), bounds.Clamp(s.exponent(), 1, 2))
}

func (s StatedLoss) exponent() float64 {
	if s.Exponent == 0 {
		return 2
	}
	return s.Exponent
}
