package moistair

import (
	"cmp"
	"fmt"
	"math"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Recovery is what a measured or computed exchange amounts to: Total is by
// enthalpy.
type Recovery struct{ Sensible, Latent, Total Share }

// Share is an effectiveness; Known is false where outdoor and indoor air are too
// alike in that respect for a share to mean anything.
type Share struct {
	Value q.Ratio
	Known bool
}

// Recovered finds the effectiveness from the states of air:
//
//	eps = m_s (X_o - X_s)/(m_min (X_o - X_i)),  X = temperature, humidity ratio, enthalpy
//
// for the mass flows of dry air. With equal flows Total is also the enthalpy
// recovery ratio of California and ASHRAE 90.1. Differences of less than 0.1 K,
// 0.01 g/kg or 100 J/kg give an unknown Share. Source: ASHRAE 84, AHRI 1060, ISO
// 16494-1, from memory; the ratio from the glossary of the California code.
func Recovered(outdoor, supply, indoor State, supplyMass, extractMass MassFlow) (Recovery, error) {
	err := cmp.Or(outdoor.check("outdoor air"), supply.check("supply air"), indoor.check("indoor air"),
		checkMass("supply mass flow", supplyMass), checkMass("extract mass flow", extractMass))
	if err != nil {
		return Recovery{}, fmt.Errorf("recovery: %w", err)
	}
	scale := float64(supplyMass / min(supplyMass, extractMass))
	return Recovery{
		Sensible: shareOf(outdoor.dryBulb, supply.dryBulb, indoor.dryBulb, scale, 0.1),
		Latent:   shareOf(outdoor.humidity, supply.humidity, indoor.humidity, scale, 1e-5),
		Total:    shareOf(float64(outdoor.Enthalpy()), float64(supply.Enthalpy()), float64(indoor.Enthalpy()), scale, 100),
	}, nil
}

func shareOf(outdoor, supply, indoor, scale, least float64) Share {
	if math.Abs(outdoor-indoor) < least {
		return Share{}
	}
	return Share{q.Ratio(scale * (outdoor - supply) / (outdoor - indoor)), true}
}
