package rules_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// Fan efficacy by the energy code of both editions, on both sides of each figure
// (testdata/published/equipment).
func TestFanEfficacyVerdicts(t *testing.T) {
	fanEfficacy(t, builtIn(t, "iecc-2021"), "equipment/iecc-efficacy.toml")
	fanEfficacy(t, builtIn(t, "iecc-2018"), "equipment/iecc-efficacy-2018.toml")
}

func fanEfficacy(t *testing.T, pack *rules.Effective, file string) {
	t.Helper()
	type fan struct {
		Kind, Flow, Joins, Rule, Expected string
		InLine                            bool `toml:"in_line"`
	}
	for _, c := range published[fan](t, file) {
		efficacy := float64(parsed(t, c.Expected).(quantity.Efficacy))
		flow := float64(parsed(t, c.Flow).(quantity.Flow))
		unit := map[string]any{"id": "unit", "kind": c.Kind, "supply_flow": c.Flow, "extract_flow": c.Flow}
		if c.Joins != "" {
			unit["supply_joins"] = c.Joins
		}
		with := map[string]any{"ventilator": thing(unit)}
		if !c.InLine { // the duct on the room side leads elsewhere
			with["duct"] = thing(map[string]any{"id": "extract-run", "to": "stale"})
		}
		for share, want := range map[float64]rules.Outcome{1.0001: rules.Pass, 0.999: rules.Fail} {
			unit["power"] = fmt.Sprintf("%.9f W", flow/(efficacy*share))
			assert.Equal(t, want, show(t, pack, c.Rule, "house", with), "%+v at %v", c, share)
		}
	}
}

// Heat recovery by zone, and efficacies worked out.
func TestRecoveryVerdicts(t *testing.T) {
	type recovery struct {
		What, Zone, Kind, Recovery, Flow, Power string
		Outcome                                 map[string]string
	}
	pack := builtIn(t, "iecc-2021")
	for _, c := range published[recovery](t, "equipment/iecc-recovery.toml") {
		require.NotEmpty(t, c.Outcome, c.What)
		unit := map[string]any{"id": "unit", "kind": c.Kind, "sensible_recovery": c.Recovery}
		if c.Flow != "" {
			unit["supply_flow"], unit["power"] = c.Flow, c.Power
		}
		with := map[string]any{"dwelling": map[string]any{"climate_zone": c.Zone}, "ventilator": thing(unit)}
		for id, want := range c.Outcome {
			assert.Equal(t, want, string(show(t, pack, id, "house", with)), "%s: %s", c.What, id)
		}
	}
}
