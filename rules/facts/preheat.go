package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// preheats tells a unit that warms outdoor air before its core.
func preheats(unit *design.Ventilator) bool {
	return unit.PreheatTo != nil || unit.Frost != nil && *unit.Frost == "preheat"
}

// entering is the temperature of outdoor air as it meets the core at winter design.
// In weather colder than a preheater holds its temperature at, it adds no more than
// it does there.
func (f *Facts) entering(unit *design.Ventilator) result[q.Temperature] {
	line := Line{Name: "air that enters the core at " + winter.name, Of: f.label(unit), Source: "definition"}
	if preheats(unit) {
		line.Formula = "preheat, at most outdoor + (preheat - lowest outdoor temperature that it holds at); outdoor where that is warmer"
	} else {
		line.Formula = "outdoor: no preheater is given"
	}
	return compute(f, line, func(w *working) func() (q.Temperature, error) {
		d := f.Design.Dwelling
		outdoor := given(w, "outdoor temperature", d.WinterOutdoor, d.Ref, "winter_outdoor")
		if !preheats(unit) {
			return func() (q.Temperature, error) { return outdoor, nil }
		}
		to := given(w, "preheat", unit.PreheatTo, unit.Ref, "preheat_to")
		lowest := given(w, "lowest outdoor temperature", unit.FrostTo, unit.Ref, "frost_protection_to")
		return func() (q.Temperature, error) { return max(outdoor, min(to, outdoor+to-lowest)), nil }
	})
}

// preheatPower is the heat that a preheater adds at winter design.
func (f *Facts) preheatPower(unit *design.Ventilator) result[q.Power] {
	line := Line{Name: "heat of the preheater at " + winter.name, Of: f.label(unit),
		Formula: "dry air in the supply flow x (1006 + 1860 W) J/kg K x (air that enters the core - outdoor)", Source: "enthalpy of moist air"}
	return compute(f, line, func(w *working) func() (q.Power, error) {
		operation := f.air(w, winter)
		to := from(w, "air that enters the core", f.entering(unit))
		supply := given(w, "supply flow", unit.SupplyFlow, unit.Ref, "supply_flow")
		return func() (q.Power, error) {
			o, err := operation(supply, supply)
			if err != nil {
				return 0, err
			}
			return moistair.PreheatPower(o.Outdoor, o.Supply, to)
		}
	})
}
