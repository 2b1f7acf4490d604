package envelope

import (
	"fmt"
	"slices"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Venting is a way in which a combustion appliance is vented, as far as the
// depressurization that it bears depends on it.
type Venting string

// The ways of venting.
const (
	LoneWaterHeater    Venting = "natural-draft water heater alone on its flue"
	SharedNaturalDraft Venting = "natural-draft boiler or furnace sharing a vent with a water heater"
	NaturalDraft       Venting = "natural-draft appliance on its own vent"
	SharedInducedDraft Venting = "induced-draft appliance sharing a vent with a water heater"
	InducedDraft       Venting = "induced-draft appliance on its own vent"
	SealedCombustion   Venting = "direct-vent or sealed-combustion appliance"
	SpillageProneHouse Venting = "any spillage-susceptible appliance, Canada"
	OtherCanadianHouse Venting = "no spillage-susceptible appliance, Canada"
)

// Tolerance is the deepest depressurization at which appliances of a venting are
// taken to vent: a positive pressure. Read tells how the figure is known: seen,
// secondary or memory, as in a pack's basis.
type Tolerance struct {
	Venting  Venting
	Limit    q.Pressure
	Document string
	Read     string
}

const (
	bpi  = "BPI technical standard, combustion appliance zone depressurization limits"
	f326 = "CSA F326-M91"
)

var tolerances = []Tolerance{
	{LoneWaterHeater, 2, bpi, "secondary"},
	{SharedNaturalDraft, 3, bpi, "secondary"},
	{NaturalDraft, 5, bpi, "secondary"},
	{SharedInducedDraft, 5, bpi, "secondary"},
	{InducedDraft, 15, bpi, "secondary"},
	{SealedCombustion, 50, bpi, "memory"},
	{SpillageProneHouse, 5, f326, "secondary"},
	{OtherCanadianHouse, 10, f326, "memory"},
}

// Tolerances lists what combustion appliances bear, the most sensitive first,
// then Canada's limits for the house.
func Tolerances() []Tolerance { return slices.Clone(tolerances) }

// ToleranceOf is the tolerance of a venting; an unknown word is an error.
func ToleranceOf(v Venting) (Tolerance, error) {
	for _, t := range tolerances {
		if t.Venting == v {
			return t, nil
		}
	}
	return Tolerance{}, fmt.Errorf("venting %q is not known, expected one such as %q", string(v), string(NaturalDraft))
}
