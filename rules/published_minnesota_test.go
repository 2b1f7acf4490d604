package rules_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// Minnesota, Table N1104.2: every pair, at the top of its area band; each is the
// equation there, and half of it but not below 40 cfm, rounded half up.
func TestMinnesotaTable(t *testing.T) {
	type pair struct {
		FloorArea         string `toml:"floor_area"`
		Bedrooms          int
		Total, Continuous string
	}
	pack := builtIn(t, "minnesota")
	pairs := published[pair](t, "rates/minnesota-table.toml")
	assert.Len(t, pairs, 60)
	cfm, ft2 := parsed(t, "1 cfm").(quantity.Flow), parsed(t, "1 ft2").(quantity.Area)
	for _, p := range pairs {
		area := parsed(t, p.FloorArea).(quantity.Area)
		for name, want := range map[string]string{"total_rate": p.Total, "continuous_rate": p.Continuous} {
			table := pack.Tables[name].Part
			equal(t, want, look(t, table, area, float64(p.Bedrooms)), p, name)
			equal(t, want, look(t, table, area-400*ft2, float64(p.Bedrooms)), p, name, "inside the band")
		}
		total := 0.02*float64(area/ft2) + 15*float64(p.Bedrooms+1)
		assert.InDelta(t, total, float64(parsed(t, p.Total).(quantity.Flow)/cfm), 1e-6, "%+v", p)
		assert.InDelta(t, math.Floor(max(40, total/2)+0.5), float64(parsed(t, p.Continuous).(quantity.Flow)/cfm), 1e-6, "%+v", p)
	}
}

// Every pair by the rules: on it, and a thousandth below.
func TestMinnesotaTableVerdicts(t *testing.T) {
	type pair struct {
		FloorArea         string `toml:"floor_area"`
		Bedrooms          int
		Total, Continuous string
	}
	pack := builtIn(t, "minnesota")
	for _, p := range published[pair](t, "rates/minnesota-table.toml") {
		for share, want := range map[quantity.Flow]rules.Outcome{1: rules.Pass, 0.999: rules.Review} {
			unit := map[string]any{"id": "unit", "supply_flow": exact(parsed(t, p.Continuous).(quantity.Flow) * share),
				"boost": map[string]any{"supply_flow": exact(parsed(t, p.Total).(quantity.Flow) * share)}}
			with := map[string]any{"dwelling": map[string]any{"floor_area": p.FloorArea, "bedrooms": p.Bedrooms}, "ventilator": thing(unit)}
			assert.Equal(t, want, show(t, pack, "total-ventilation-by-table", "house", with), "%+v at %v", p, share)
			assert.Equal(t, want, show(t, pack, "continuous-ventilation-by-table", "house", with), "%+v at %v", p, share)
		}
	}
}
