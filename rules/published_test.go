package rules_test

import (
	"bytes"
	"fmt"
	"math"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// published reads a file of outside facts; it must hold at least some cases.
func published[T any](t *testing.T, name string) []T {
	t.Helper()
	var file struct {
		Case []T `toml:"case"`
	}
	_, err := toml.DecodeFile(filepath.Join("..", "testdata", "published", filepath.FromSlash(name)), &file)
	require.NoError(t, err)
	require.NotEmpty(t, file.Case, name)
	return file.Case
}

// look reads a table of a pack and gives the cell in SI.
func look(t *testing.T, table *rules.Table, inputs ...any) float64 {
	t.Helper()
	cell, err := table.Look(inputs)
	require.NoError(t, err)
	return reflect.ValueOf(cell).Float()
}

func parsed(t *testing.T, text string) any {
	t.Helper()
	v, err := quantity.Parse(text)
	require.NoError(t, err)
	return v
}

func equal(t *testing.T, expected string, got float64, about ...any) {
	t.Helper()
	want := reflect.ValueOf(parsed(t, expected)).Float()
	assert.Zero(t, quantity.Compare(want, got), append([]any{"expected %s, got %v in SI, %v", expected, got}, about...)...)
}

// IRC 2021 table M1504.2: every cell (testdata/published/ducts).
func TestDuctLengthTables(t *testing.T) {
	pack := builtIn(t, "irc-2021")
	type cell struct{ Diameter, Flow, Expected string }
	for file, name := range map[string]string{"ducts/irc-smooth.toml": "smooth_duct_length", "ducts/irc-flexible.toml": "flexible_duct_length"} {
		cells := published[cell](t, file)
		assert.Len(t, cells, 48, file)
		for _, c := range cells {
			got := look(t, pack.Tables[name].Part, parsed(t, c.Diameter), parsed(t, c.Flow))
			switch c.Expected {
			case "X":
				assert.Equal(t, math.Inf(-1), got, "%s %+v", file, c)
			case "NL":
				assert.Equal(t, math.Inf(1), got, "%s %+v", file, c)
			default:
				equal(t, c.Expected, got, c)
			}
		}
	}
}

// show asks a rule of a base design with some keys laid over it.
func show(t *testing.T, pack *rules.Effective, id, base string, with map[string]any) rules.Outcome {
	t.Helper()
	rule := pack.Rule(id)
	require.NotNil(t, rule, id)
	var text bytes.Buffer
	require.NoError(t, toml.NewEncoder(&text).Encode(with))
	run := pack.Run(rule, rules.Sample{Base: base, With: text.String()})
	require.NoError(t, run.Err)
	return run.Got
}

// thing is one table of a list, as a fragment writes it.
func thing(keys map[string]any) []map[string]any { return []map[string]any{keys} }

// IRC 2021 table M1505.4.3(1): every cell, at the top of its area band and at both
// ends of its bedroom band (testdata/published/rates).
func TestWholeHouseRateTable(t *testing.T) {
	type cell struct {
		AreaUpTo     string `toml:"area_up_to"`
		AreaAbove    string `toml:"area_above"`
		BedroomsFrom int    `toml:"bedrooms_from"`
		BedroomsTo   *int   `toml:"bedrooms_to"`
		Expected     string
	}
	table := builtIn(t, "irc-2021").Tables["whole_house_rate"].Part
	cells := published[cell](t, "rates/irc-table.toml")
	assert.Len(t, cells, 30)
	for _, c := range cells {
		area := 10 * float64(parsed(t, "7500 ft2").(quantity.Area)) // of the last band, which has no top
		if c.AreaUpTo != "" {
			area = float64(parsed(t, c.AreaUpTo).(quantity.Area))
		}
		last := c.BedroomsFrom + 5 // of the last band
		if c.BedroomsTo != nil {
			last = *c.BedroomsTo
		}
		for bedrooms := c.BedroomsFrom; bedrooms <= last; bedrooms++ {
			equal(t, c.Expected, look(t, table, quantity.Area(area), float64(bedrooms)), c, bedrooms)
		}
		if c.AreaAbove != "" {
			just := parsed(t, c.AreaAbove).(quantity.Area) + 1e-6
			equal(t, c.Expected, look(t, table, just, float64(c.BedroomsFrom)), c, "just above the band below")
		}
	}
}

// IRC 2021 table M1505.4.3(2): the printed factors, and some between them.
func TestRunTimeFactors(t *testing.T) {
	type factor struct {
		RunShare  string `toml:"run_share"`
		Expected  any    // a factor, or "not permitted"
		Tolerance float64
	}
	table := builtIn(t, "irc-2021").Tables["run_time_factor"].Part
	for _, f := range published[factor](t, "rates/irc-run-time.toml") {
		want, inside := f.Expected.(float64)
		if !inside {
			assert.Equal(t, "not permitted", f.Expected)
			_, err := table.Look([]any{parsed(t, f.RunShare)})
			assert.Error(t, err, "%+v", f)
			continue
		}
		assert.InDelta(t, want, look(t, table, parsed(t, f.RunShare)), f.Tolerance+1e-9, "%+v", f)
	}
}

// Whole-house rates of single houses: a flow a little above the rounded figure
// passes, one a thousandth below it fails.
func TestWholeHouseRateVerdicts(t *testing.T) {
	type house struct {
		Name, Continuous, Credited, Needed string
		FloorArea                          string `toml:"floor_area"`
		RunShare                           string `toml:"run_share"`
		Bedrooms                           int
	}
	pack := builtIn(t, "irc-2021")
	asked := 0
	for _, h := range published[house](t, "rates/irc-houses.toml") {
		unit := map[string]any{"id": "unit"}
		enough := h.Continuous
		if h.Credited != "" && h.Bedrooms <= 3 { // the base house supplies three bedrooms directly
			enough = h.Credited
		} else if h.Continuous != "" {
			unit["kind"] = "exhaust-fan"
		}
		if h.RunShare != "" {
			if h.Needed == "" {
				continue
			}
			share := float64(parsed(t, h.RunShare).(quantity.Ratio))
			enough = h.Needed
			unit["control"], unit["cycle"], unit["on_time"] = "timer", "4 h", quantity.Format(quantity.Duration(share*4*3600), quantity.SI)
			if h.Credited == "" {
				unit["kind"] = "exhaust-fan"
			}
		}
		if enough == "" {
			continue
		}
		asked++
		for share, want := range map[float64]rules.Outcome{1.0005: rules.Pass, 0.999: rules.Fail} {
			flow := float64(parsed(t, enough).(quantity.Flow)) * share
			text := fmt.Sprintf("%.12f m3/s", flow)
			unit["supply_flow"], unit["extract_flow"] = text, text
			got := show(t, pack, "whole-house-rate", "rates", map[string]any{
				"dwelling": map[string]any{"floor_area": h.FloorArea, "bedrooms": h.Bedrooms}, "ventilator": thing(unit)})
			assert.Equal(t, want, got, "%s: %s at %v", h.Name, enough, share)
		}
	}
	assert.GreaterOrEqual(t, asked, 5)
}

// Duct runs on and beside the limit of table M1504.2, by the rule.
func TestDuctLengthVerdicts(t *testing.T) {
	type limit struct {
		Material, Diameter, Width, Height, Flow, Length, Expected string
		Elbows                                                    int
	}
	outcome := map[string]rules.Outcome{"permitted": rules.Pass, "too long": rules.Fail, "not permitted": rules.Fail, "outside the table": rules.Review}
	pack := builtIn(t, "irc-2021")
	for _, c := range published[limit](t, "ducts/irc-limits.toml") {
		duct := map[string]any{"id": "fresh-run", "flow": c.Flow, "elbows": c.Elbows, "length": c.Length, "material": "galvanized-steel"}
		id := "smooth-duct-length"
		if c.Material == "flexible" {
			id, duct["material"] = "flexible-duct-length", "flexible"
		}
		var without []string
		if c.Diameter != "" {
			duct["diameter"] = c.Diameter
		} else {
			duct["width"], duct["height"] = c.Width, c.Height
			without = []string{"duct.fresh-run.diameter"}
		}
		want, known := outcome[c.Expected]
		require.True(t, known, "%+v", c)
		other := map[string]any{"id": "stale-run", "elbows": 0, "length": "0.5 ft", "diameter": "8 in", "flow": "50 cfm"}
		var text bytes.Buffer
		require.NoError(t, toml.NewEncoder(&text).Encode(map[string]any{"duct": []map[string]any{duct, other}}))
		run := pack.Run(pack.Rule(id), rules.Sample{Base: "ducts", With: text.String(), Without: without})
		require.NoError(t, run.Err)
		assert.Equal(t, want, run.Got, "%+v", c)
	}
}

// Access cases of the IRC, by the rules of both packs.
func TestAccessVerdicts(t *testing.T) {
	type access struct {
		ID, What, Room string
		Access         map[string]any
		Unit           map[string]any
		Duct           map[string]any
		LeaveOut       []string `toml:"leave_out"`
		Outcome        map[string]string
	}
	irc, practice := builtIn(t, "irc-2021"), builtIn(t, "practice")
	for _, c := range published[access](t, "access/irc-access.toml") {
		require.NotEmpty(t, c.Outcome, c.ID)
		for id, want := range c.Outcome {
			pack, base := irc, "access"
			if irc.Rule(id) == nil {
				pack, base = practice, "house"
			}
			room := map[string]any{"id": "stand", "use": c.Room}
			unit := map[string]any{"id": "unit", "room": "stand", "access": c.Access}
			for k, v := range c.Unit {
				unit[k] = v
			}
			with := map[string]any{"room": thing(room), "ventilator": thing(unit)}
			if c.Duct != nil {
				c.Duct["id"] = "trunk"
				with["duct"] = thing(c.Duct)
			}
			var without []string
			for _, key := range c.LeaveOut {
				without = append(without, "ventilator.unit.access."+key)
			}
			var text bytes.Buffer
			require.NoError(t, toml.NewEncoder(&text).Encode(with))
			run := pack.Run(pack.Rule(id), rules.Sample{Base: base, With: text.String(), Without: without})
			require.NoError(t, run.Err, "%s %s", c.ID, id)
			assert.Equal(t, want, string(run.Got), "%s, %s: %s", c.ID, c.What, id)
		}
	}
}
