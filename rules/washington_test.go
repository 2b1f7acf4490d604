package rules_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// Washington table M1505.4.3(1): every cell, at the top and just above the bottom
// of its area band (testdata/published/rates). No cell lies below Equation 15-1
// with its floor of 30 cfm, on which the rule rests.
func TestWashingtonRateTable(t *testing.T) {
	type cell struct {
		AreaUpTo     string `toml:"area_up_to"`
		AreaAbove    string `toml:"area_above"`
		BedroomsFrom int    `toml:"bedrooms_from"`
		BedroomsTo   *int   `toml:"bedrooms_to"`
		Expected     string
	}
	table := builtIn(t, "washington-2021").Tables["whole_house_rate"].Part
	cells := published[cell](t, "rates/washington-table.toml")
	assert.Len(t, cells, 50)
	for _, c := range cells {
		top := parsed(t, c.AreaUpTo).(quantity.Area)
		last := c.BedroomsFrom + 3
		if c.BedroomsTo != nil {
			last = *c.BedroomsTo
		}
		for bedrooms := c.BedroomsFrom; bedrooms <= last; bedrooms++ {
			equal(t, c.Expected, look(t, table, top, float64(bedrooms)), c, bedrooms)
		}
		if c.AreaAbove != "" {
			just := parsed(t, c.AreaAbove).(quantity.Area) + 1e-6
			equal(t, c.Expected, look(t, table, just, float64(c.BedroomsFrom)), c, "just above the band below")
		}
		if c.BedroomsTo != nil {
			least := max(30, 0.01*float64(top)/0.09290304+7.5*float64(*c.BedroomsTo+1))
			cfm := float64(parsed(t, c.Expected).(quantity.Flow)) / float64(parsed(t, "1 cfm").(quantity.Flow))
			assert.GreaterOrEqual(t, cfm, least-1e-9, "%+v lies below the equation", c)
		}
	}
	_, err := table.Look([]any{parsed(t, "5001 ft2"), 3.0})
	assert.Error(t, err, "the table ends at 5000 ft2")
}

// Washington table M1505.4.3.2: the printed factors, one between them, and those
// of the model code that it leaves out.
func TestWashingtonRunTimeFactors(t *testing.T) {
	type factor struct {
		RunShare string `toml:"run_share"`
		Expected any    // a factor, or "not permitted"
	}
	table := builtIn(t, "washington-2021").Tables["run_time_factor"].Part
	for _, f := range published[factor](t, "rates/washington-run-time.toml") {
		if want, inside := f.Expected.(float64); inside {
			assert.InDelta(t, want, look(t, table, parsed(t, f.RunShare)), 1e-9, "%+v", f)
			continue
		}
		assert.Equal(t, "not permitted", f.Expected)
		_, err := table.Look([]any{parsed(t, f.RunShare)})
		assert.Error(t, err, "%+v", f)
	}
}

// Washington table M1505.4.3(2): the coefficient times 50 cfm passes, a thousandth
// less fails, for a house that is or is not balanced and distributed.
func TestWashingtonCoefficients(t *testing.T) {
	type coefficient struct {
		Balanced, Distributed bool
		Expected              float64
	}
	pack := builtIn(t, "washington-2021")
	cells := published[coefficient](t, "rates/washington-coefficient.toml")
	assert.Len(t, cells, 4)
	for _, c := range cells {
		for share, want := range map[float64]rules.Outcome{1: rules.Pass, 0.999: rules.Fail} {
			flow := 50 * c.Expected * share
			extract := flow
			if !c.Balanced {
				extract = 2 * flow
			}
			with := fmt.Sprintf(`ventilator = [{ id = "unit", supply_flow = "%g cfm", extract_flow = "%g cfm" }]`, flow, extract)
			var without []string
			if !c.Distributed {
				without = []string{"terminal.into-bed-1"}
			}
			run := pack.Run(pack.Rule("whole-house-rate"), rules.Sample{Base: "rates", With: with, Without: without})
			assert.NoError(t, run.Err)
			assert.Equal(t, want, run.Got, "%+v at %v", c, share)
		}
	}
}

// Washington M1505.4.1.4, by the rule on design flows and by that on tested ones.
func TestWashingtonBalance(t *testing.T) {
	type balance struct {
		Supply, Exhaust string
		Balanced        bool
	}
	pack := builtIn(t, "washington-2021")
	for _, b := range published[balance](t, "rates/washington-balance.toml") {
		want := rules.Fail
		if b.Balanced {
			want = rules.Pass
		}
		assert.Equal(t, want, show(t, pack, "coefficient-balanced", "rates", map[string]any{
			"ventilator": thing(map[string]any{"id": "unit", "supply_flow": b.Supply, "extract_flow": b.Exhaust})}), "%+v as designed", b)
		assert.Equal(t, want, show(t, pack, "tested-balance", "rates", map[string]any{
			"project":       map[string]any{"stage": "final"},
			"commissioning": map[string]any{"supply_flow": b.Supply, "extract_flow": b.Exhaust}}), "%+v as tested", b)
	}
}

// Washington table M1505.4.4.2: every printed cell.
func TestWashingtonExhaustDucts(t *testing.T) {
	type cell struct{ Material, Diameter, Flow, Expected string }
	pack := builtIn(t, "washington-2021")
	cells := published[cell](t, "ducts/washington-exhaust.toml")
	assert.Len(t, cells, 20)
	for _, c := range cells {
		got := look(t, pack.Tables[c.Material+"_exhaust_duct"].Part, parsed(t, c.Diameter), parsed(t, c.Flow))
		switch c.Expected {
		case "X":
			assert.Equal(t, math.Inf(-1), got, "%+v", c)
		case "NL":
			assert.Equal(t, math.Inf(1), got, "%+v", c)
		default:
			equal(t, c.Expected, got, c)
		}
	}
}
