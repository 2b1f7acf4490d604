package envelope

import (
	"cmp"
	"fmt"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// MinnesotaColumn is the column of Minnesota's makeup air table that the
// appliances of a new dwelling select.
type MinnesotaColumn string

// The columns.
const (
	MinnesotaA MinnesotaColumn = "A" // only power-vent or direct-vent appliances, or none
	MinnesotaB MinnesotaColumn = "B" // a fan-assisted one with power-vent or direct-vent ones
	MinnesotaC MinnesotaColumn = "C" // one atmospherically vented or one solid-fuel appliance
	MinnesotaD MinnesotaColumn = "D" // several of those
)

var minnesotaInfiltration = map[MinnesotaColumn]q.Velocity{
	MinnesotaA: 0.15 * foot / minute,
	MinnesotaB: 0.09 * foot / minute,
	MinnesotaC: 0.06 * foot / minute,
	MinnesotaD: 0.03 * foot / minute,
}

const minnesotaDryer q.Flow = 135 * cfm

// MinnesotaHouse is a new dwelling as Minnesota's form asks for it. Largest and
// Next are the two largest exhaust devices apart from the dryer; 0 where they
// recirculate or have interlocked powered makeup.
type MinnesotaHouse struct {
	Column        MinnesotaColumn
	FloorArea     q.Area // conditioned, with an unfinished basement
	ExhaustOnly   q.Flow // continuous exhaust-only system; 0 when balanced
	HasDryer      bool
	Largest, Next q.Flow
}

// MinnesotaMakeup is the result: Makeup is Exhaust minus Infiltration, at least 0.
type MinnesotaMakeup struct{ Infiltration, Exhaust, Makeup q.Flow }

// Makeup is the makeup air by Minnesota's form:
//
//	infiltration = floor area x 0.15, 0.09, 0.06 or 0.03 cfm/ft2 (columns A to D)
//	exhaust = exhaust-only + 135 cfm dryer + 80 % of largest + 80 % of next (not in A)
//
// Flows are 0 to 100 m3/s, floor area 1 m2 to 100 000 m2. Source: Minnesota Rules
// 1346.0501, table 501.4.1, and a city's form of it.
func (h MinnesotaHouse) Makeup() (MinnesotaMakeup, error) {
	rate, known := minnesotaInfiltration[h.Column]
	if !known {
		return MinnesotaMakeup{}, fmt.Errorf("column %q is not in the table, expected A, B, C or D", string(h.Column))
	}
	err := cmp.Or(checkFloor(h.FloorArea), checkFlow("exhaust-only flow", h.ExhaustOnly),
		checkFlow("largest exhaust", h.Largest), checkFlow("next largest exhaust", h.Next))
	if err != nil {
		return MinnesotaMakeup{}, err
	}
	m := MinnesotaMakeup{Infiltration: q.Flow(float64(h.FloorArea) * float64(rate)), Exhaust: h.exhaust()}
	m.Makeup = max(0, m.Exhaust-m.Infiltration)
	return m, nil
}

func (h MinnesotaHouse) exhaust() q.Flow {
	total := h.ExhaustOnly + 0.8*h.Largest
	if h.HasDryer {
		total += minnesotaDryer
	}
	if h.Column != MinnesotaA {
		total += 0.8 * h.Next
	}
	return total
}
