package moistair

import (
	"cmp"
	"fmt"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Core is what a recovery core does, as shares from 0 to 1.
//
// Sensible and Latent are effectiveness on the smaller mass flow, for
// temperature and for humidity ratio: eps = m_s (X_o - X_s)/(m_min (X_o - X_i)).
// Latent is 0 for a core that passes no moisture. Sensible is core-only when fans
// are given to Run, and the apparent (ASE) figure when not: see Rating. Source:
// ASHRAE 84, AHRI 1060, ISO 16494-1, from memory.
//
// Transfer is the exhaust air transfer ratio, the share of indoor air in the
// supply air. The effectiveness of a rating holds for the supply air as it leaves,
// transfer included, so Transfer changes only how much outdoor air there is.
type Core struct{ Sensible, Latent, Transfer q.Ratio }

// Operation is a core at work between two states of air of one pressure. The mass
// flows are dry air. Fan powers are optional: heat that the fans give their
// stream after the core.
type Operation struct {
	Outdoor, Indoor       State
	Supply, Extract       MassFlow
	SupplyFan, ExhaustFan q.Power
}

const mostFanPower q.Power = 100_000

func (c Core) check() error {
	return cmp.Or(
		bounds.Check("sensible effectiveness", c.Sensible, 0, 1),
		bounds.Check("latent effectiveness", c.Latent, 0, 1),
		bounds.Check("exhaust air transfer ratio", c.Transfer, 0, 1))
}

func (o Operation) check() error {
	err := cmp.Or(o.Outdoor.check("outdoor air"), o.Indoor.check("indoor air"))
	if err != nil {
		return err
	}
	return cmp.Or(
		checkMass("supply mass flow", o.Supply),
		checkMass("extract mass flow", o.Extract),
		bounds.Check("supply fan power", o.SupplyFan, 0, mostFanPower),
		bounds.Check("exhaust fan power", o.ExhaustFan, 0, mostFanPower),
		samePressure(o.Outdoor, o.Indoor))
}

// shares are what each stream gets of the difference between outdoor and indoor
// air: m_min/m times the effectiveness.
type shares struct{ supplyHeat, supplyMoisture, exhaustHeat, exhaustMoisture float64 }

func (c Core) shares(supply, extract MassFlow) shares {
	least := min(supply, extract)
	sensible, latent := float64(bounds.Clamp(c.Sensible, 0, 1)), float64(bounds.Clamp(c.Latent, 0, 1))
	ofSupply, ofExtract := float64(least/supply), float64(least/extract)
	return shares{sensible * ofSupply, latent * ofSupply, sensible * ofExtract, latent * ofExtract}
}

// withFan warms air by a fan's power and names the stream in what goes wrong.
func (f fog) withFan(what string, fan q.Power, m MassFlow, p float64) (State, error) {
	h := enthalpy(f.temperature, f.vapor) + float64(fan)/float64(m)
	f.temperature = temperatureOf(h, f.vapor)
	air, err := f.air(p)
	if err != nil {
		return State{}, fmt.Errorf("%s: %w", what, err)
	}
	return air, nil
}
