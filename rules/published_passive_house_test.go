package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/ventlint/ventlint/checker/quantity"
)

// Passive House supply for persons: on each figure, and just below it.
func TestPassiveHouseSupply(t *testing.T) {
	type household struct {
		Persons      int
		Usual, Least string
	}
	pack := builtIn(t, "passive-house")
	for _, h := range published[household](t, "rates/passive-house.toml") {
		for rule, figure := range map[string]string{"supply-for-persons": h.Least, "usual-supply-for-persons": h.Usual} {
			for share, want := range beside {
				flow := exact(parsed(t, figure).(quantity.Flow) * share)
				with := map[string]any{"dwelling": map[string]any{"occupants": h.Persons},
					"ventilator": thing(map[string]any{"id": "unit", "supply_flow": flow})}
				assert.Equal(t, want, show(t, pack, rule, "house", with), "%+v, %s at %v", h, rule, share)
			}
		}
	}
}
