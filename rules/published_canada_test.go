package rules_test

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// NBC Table 9.32.3.3: every row, as table and by the rules on and beside both ends.
func TestPrincipalFanCapacity(t *testing.T) {
	type row struct {
		Bedrooms    int
		Least, Most string
	}
	pack := builtIn(t, "nbc-2020")
	rows := published[row](t, "rates/nbc-principal-fan.toml")
	assert.Len(t, rows, 5)
	for _, r := range rows {
		equal(t, r.Least, look(t, pack.Tables["principal_fan_least"].Part, float64(r.Bedrooms)), r)
		equal(t, r.Most, look(t, pack.Tables["principal_fan_most"].Part, float64(r.Bedrooms)), r)
		dwelling := map[string]any{"bedrooms": r.Bedrooms}
		least, most := parsed(t, r.Least).(quantity.Flow), parsed(t, r.Most).(quantity.Flow)
		for flow, want := range map[quantity.Flow][2]rules.Outcome{least: {rules.Pass, rules.Pass}, most: {rules.Pass, rules.Pass},
			least - 1e-4: {rules.Fail, rules.Pass}, most + 1e-4: {rules.Pass, rules.Fail}} {
			with := map[string]any{"dwelling": dwelling, "ventilator": thing(map[string]any{"id": "unit", "extract_flow": exact(flow)})}
			assert.Equal(t, want[0], show(t, pack, "principal-fan-least", "house", with), "%+v %v", r, flow)
			assert.Equal(t, want[1], show(t, pack, "principal-fan-most", "house", with), "%+v %v", r, flow)
		}
	}
}

// The table that Ontario replaced in 2025, from memory: on each figure and under it.
func TestOlderOntarioPrincipalExhaust(t *testing.T) {
	type row struct {
		Bedrooms int
		Least    string
	}
	pack := builtIn(t, "ontario-2012")
	rows := published[row](t, "rates/ontario-2012-principal-fan.toml")
	assert.Len(t, rows, 4)
	for _, r := range rows {
		equal(t, r.Least, look(t, pack.Tables["principal_fan_least"].Part, float64(r.Bedrooms)), r)
		least := parsed(t, r.Least).(quantity.Flow)
		for flow, want := range map[quantity.Flow]rules.Outcome{least: rules.Pass, least - 1e-4: rules.Fail} {
			with := map[string]any{"dwelling": map[string]any{"bedrooms": r.Bedrooms}, "ventilator": thing(map[string]any{"id": "unit", "extract_flow": exact(flow)})}
			assert.Equal(t, want, show(t, pack, "principal-fan-least", "house", with), "%+v %v", r, flow)
		}
	}
	_, err := pack.Tables["principal_fan_least"].Part.Look([]any{5.0})
	assert.Error(t, err)
}

// NBC Table 9.32.3.11.-A: every cell, and what a table of lengths must be.
func TestCanadianDuctLengthTable(t *testing.T) {
	type cell struct{ Pressure, Diameter, Flow, Expected string }
	pack := builtIn(t, "nbc-2020")
	lookup := func(pressure, diameter, flow any) float64 {
		row := look(t, pack.Tables["rated_pressure_row"].Part, pressure)
		size := look(t, pack.Tables["duct_size_row"].Part, diameter)
		return look(t, pack.Tables["duct_length"].Part, 1000*row+size, flow)
	}
	cells := published[cell](t, "ducts/nbc-round.toml")
	assert.Len(t, cells, 210)
	for _, c := range cells {
		pressure, diameter, flow := parsed(t, c.Pressure).(quantity.Pressure), parsed(t, c.Diameter).(quantity.Length), parsed(t, c.Flow).(quantity.Flow)
		got := lookup(pressure, diameter, flow)
		if c.Expected == "0 m" {
			assert.Equal(t, math.Inf(-1), got, "%+v", c)
		} else {
			equal(t, c.Expected, got, c)
		}
		assert.GreaterOrEqual(t, got, lookup(pressure, diameter, min(flow+1e-6, quantity.Flow(0.1))), "more flow, %+v", c)
		assert.Equal(t, got, lookup(pressure+0.1, diameter+1e-4, flow-1e-6), "between printed values, %+v", c)
	}
}

// NBC Table 9.32.3.11.-B: every cell.
func TestCanadianRectangularDucts(t *testing.T) {
	type cell struct{ Width, Depth, Round string }
	table := builtIn(t, "nbc-2020").Tables["round_for_rectangular"].Part
	cells := published[cell](t, "ducts/nbc-rectangular.toml")
	assert.Len(t, cells, 17)
	for _, c := range cells {
		equal(t, c.Round, look(t, table, parsed(t, c.Depth), parsed(t, c.Width)), c)
	}
}

// Runs on and beside the limit, by the rule.
func TestCanadianDuctLengthVerdicts(t *testing.T) {
	type limit struct{ Pressure, Diameter, Flow, Material, Run, Expected string }
	pack := builtIn(t, "nbc-2020")
	for _, c := range published[limit](t, "ducts/nbc-limits.toml") {
		run := map[string]any{"id": "bed-run", "diameter": c.Diameter, "flow": c.Flow, "material": c.Material, "length": c.Run}
		wide := func(id string) map[string]any {
			return map[string]any{"id": id, "diameter": "200 mm", "flow": "1 L/s", "length": "0 m"}
		}
		got := show(t, pack, "table-duct-length", "house", map[string]any{
			"ventilator": thing(map[string]any{"id": "unit", "rated_pressure": c.Pressure}),
			"duct":       []map[string]any{run, wide("fresh-run"), wide("bath-run"), wide("stale-run")}})
		assert.Equal(t, c.Expected, string(got), "%+v", c)
	}
}

// NBC Table 9.32.3.13.-A: every row, at both ends of its band; and the side of the
// blocked width by the rule.
func TestBlockedSoffit(t *testing.T) {
	type row struct{ From, To, Expected string }
	pack := builtIn(t, "nbc-2020")
	table := pack.Tables["blocked_soffit"].Part
	rows := published[row](t, "openings/nbc-soffit.toml")
	assert.Len(t, rows, 6)
	for _, r := range rows {
		equal(t, r.Expected, look(t, table, parsed(t, r.From)), r)
		equal(t, r.Expected, look(t, table, parsed(t, r.To)), r)
	}
	_, err := table.Look([]any{parsed(t, "1800 mm")})
	assert.Error(t, err)
}

// NBC Table 9.32.3.13.-B: every row, by the rule: exactly the area passes, a
// thousandth less fails.
func TestScreenedOpeningArea(t *testing.T) {
	type row struct {
		Mesh     string
		Expected float64
	}
	pack := builtIn(t, "nbc-2020")
	duct := map[string]any{"id": "fresh-run", "width": "100 mm", "height": "100 mm"}
	for _, r := range published[row](t, "openings/nbc-mesh.toml") {
		for share, want := range map[float64]rules.Outcome{1: rules.Pass, 0.999: rules.Fail} {
			hood := map[string]any{"id": "fresh", "screen_opening": r.Mesh, "free_area": "1 mm2",
				"width": quantity.Format(quantity.Length(0.1*r.Expected*share), quantity.SI), "height": "100 mm"}
			with := map[string]any{"opening": thing(hood), "duct": thing(duct)}
			got := lay(t, pack, "screened-opening-area", with, "opening.fresh.diameter", "duct.fresh-run.diameter")
			assert.Equal(t, want, got, "%+v at %v", r, share)
		}
	}
}

// lay asks a rule of the base house with keys laid over it and others left out.
func lay(t *testing.T, pack *rules.Effective, id string, with map[string]any, without ...string) rules.Outcome {
	t.Helper()
	rule := pack.Rule(id)
	require.NotNil(t, rule, id)
	var text bytes.Buffer
	require.NoError(t, toml.NewEncoder(&text).Encode(with))
	run := pack.Run(rule, rules.Sample{Base: "house", With: text.String(), Without: without})
	require.NoError(t, run.Err)
	return run.Got
}

// exact writes a flow so that nothing of it is lost.
func exact(flow quantity.Flow) string { return fmt.Sprintf("%.12f m3/s", float64(flow)) }
