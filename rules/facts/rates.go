package facts

import (
	"errors"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/envelope"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const (
	cfm  q.Flow     = 0.3048 * 0.3048 * 0.3048 / 60
	feet q.Velocity = 0.3048 / 60 // one cfm for each square foot
)

// rateBy is the whole-dwelling rate of an equation in floor area and bedrooms.
func (f *Facts) rateBy(name, formula, source string, perArea, least float64) result[q.Flow] {
	return compute(f, Line{Name: name, Formula: formula, Source: source}, func(w *working) func() (q.Flow, error) {
		d := f.Design.Dwelling
		area := given(w, "A", d.FloorArea, d.Ref, "floor_area")
		bedrooms := given(w, "N", d.Bedrooms, d.Ref, "bedrooms")
		return func() (q.Flow, error) {
			people := max(float64(bedrooms), least) + 1
			return q.Flow(perArea*float64(feet)*float64(area)) + q.Flow(7.5*people)*cfm, nil
		}
	})
}

// combined is the outdoor air of fans and leaks together, on yearly average; the
// pressure of an unbalanced fan hinders the leaks, so the two do not add up.
func (f *Facts) combined() result[q.Flow] {
	line := Line{Name: "outdoor air of fans and leaks together", Formula: "balanced part + square root of (unbalanced part^2 + infiltration^2)",
		Source: "superposition in quadrature, ASHRAE Fundamentals chapter 16"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		var supply, extract q.Flow
		for _, unit := range f.Design.Ventilators {
			if unit.Kind != "exhaust-fan" {
				supply += from(w, unit.ID+" average supply", f.averageSupply(unit))
			}
			if unit.Kind != "supply-fan" {
				extract += from(w, unit.ID+" average extract", f.averageExtract(unit))
			}
		}
		leaks := from(w, "infiltration", f.infiltration())
		return func() (q.Flow, error) { return envelope.Quadrature.Combine(supply, extract, leaks) }
	})
}

// credited is what the credit of the IRC leaves of its whole-house rate.
func (f *Facts) credited() result[q.Flow] {
	line := Line{Name: "whole-house rate, IRC, with the credit of 30 %", Formula: "rate x 70 %; for balanced systems that supply bedrooms and a living space directly",
		Source: "IRC 2021 M1505.4.3, exception 1"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		rate := from(w, "rate", f.wholeHouse())
		return func() (q.Flow, error) { return 0.7 * rate, nil }
	})
}

func (f *Facts) wholeHouse() result[q.Flow] {
	return f.rateBy("whole-house rate, IRC Equation 15-1", "0.01 cfm/ft2 x A + 7.5 cfm x (N + 1)", "IRC 2021 M1505.4.3; the table is in the pack", 0.01, 0)
}

// perPerson is the average supply flow of a unit over the people of the dwelling.
func (f *Facts) perPerson(unit *design.Ventilator) result[q.Flow] {
	line := Line{Name: "supply air for each person", Of: f.label(unit), Formula: "average supply flow / occupants", Source: "definition"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		flow := from(w, "average supply flow", f.averageSupply(unit))
		d := f.Design.Dwelling
		people := given(w, "occupants", d.Occupants, d.Ref, "occupants")
		return func() (q.Flow, error) {
			if people == 0 {
				return 0, errNobody
			}
			return flow / q.Flow(people), nil
		}
	})
}

var errNobody = errors.New("nobody lives in the dwelling")

// airChanges is how often the average supply flow of a unit fills the dwelling.
func (f *Facts) airChanges(unit *design.Ventilator) result[q.AirChange] {
	line := Line{Name: "air changes by the supply air", Of: f.label(unit), Formula: "average supply flow / volume", Source: "definition"}
	return compute(f, line, func(w *working) func() (q.AirChange, error) {
		flow := from(w, "average supply flow", f.averageSupply(unit))
		d := f.Design.Dwelling
		volume := given(w, "volume", d.Volume, d.Ref, "volume")
		return func() (q.AirChange, error) { return q.AirChange(float64(flow) / float64(volume)), nil }
	})
}

func (f *Facts) rateLines() []Line {
	return []Line{
		*f.wholeHouse().line, *f.credited().line,
		*f.totalRate().line,
	}
}
