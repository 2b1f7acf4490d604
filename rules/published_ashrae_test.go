package rules_test

import (
	"fmt"
	"path/filepath"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// ASHRAE 62.2 table 4.1a: every cell, at the top of its area band and just above
// the band below (testdata/published/rates).
func TestTotalRateTable(t *testing.T) {
	type cell struct {
		AreaAbove string `toml:"area_above"`
		AreaUpTo  string `toml:"area_up_to"`
		Bedrooms  int
		Expected  string
	}
	table := builtIn(t, ashrae).Tables["total_rate"].Part
	cells := published[cell](t, "rates/ashrae-62.2-table.toml")
	assert.Len(t, cells, 50)
	for _, c := range cells {
		equal(t, c.Expected, look(t, table, parsed(t, c.AreaUpTo), float64(c.Bedrooms)), c)
		if c.AreaAbove != "" {
			just := parsed(t, c.AreaAbove).(quantity.Area) + 1e-6
			equal(t, c.Expected, look(t, table, just, float64(c.Bedrooms)), c, "just above the band below")
		}
	}
	_, err := table.Look([]any{parsed(t, "5001 ft2"), 1.0})
	assert.Error(t, err, "the table ends at 5000 ft2")
	_, err = table.Look([]any{parsed(t, "500 ft2"), 6.0})
	assert.Error(t, err, "the table ends at five bedrooms")
}

const ashrae = "ashrae-62-2-2019"

// ashraeHouse is one house of testdata/published/rates.
type ashraeHouse struct {
	ID, Name, Height      string
	FloorArea             string `toml:"floor_area"`
	Bedrooms              int
	Total, Table, Earlier string
	Balanced, Unbalanced  string
	Capped                string
	Flow50                string   `toml:"flow_50"`
	WeatherFactor         float64  `toml:"weather_factor"`
	Attached              string   `toml:"attached_share"`
	Within                *float64 // share of the figure
}

// dwelling is the house as a design gives it; without a leakage its figure is
// assumed and earns no credit.
func (h ashraeHouse) dwelling() map[string]any {
	d := map[string]any{"floor_area": h.FloorArea, "bedrooms": h.Bedrooms, "leakage": map[string]any{"basis": "assumed"}}
	if h.Flow50 != "" {
		d["leakage"] = map[string]any{"basis": "tested", "flow_50": h.Flow50, "weather_factor": h.WeatherFactor}
		d["height"] = h.Height
	}
	if h.Attached != "" {
		d["attached_share"] = h.Attached
	}
	return d
}

// asked checks that a rule passes at a flow and fails a little below it.
func (h ashraeHouse) asked(t *testing.T, pack *rules.Effective, rule, enough string, unit map[string]any, short rules.Outcome) {
	t.Helper()
	if enough == "" {
		return
	}
	apart := 0.0001
	if h.Within != nil {
		apart = *h.Within
	}
	flow := float64(parsed(t, enough).(quantity.Flow))
	unit["id"] = "unit"
	for share, want := range map[float64]rules.Outcome{1 + apart: rules.Pass, 1 - apart: short} {
		text := cubicMetres(flow * share)
		unit["supply_flow"], unit["extract_flow"] = text, text
		if flow == 0 && want != rules.Pass {
			continue // less than nothing
		}
		got := show(t, pack, rule, "house", map[string]any{"dwelling": h.dwelling(), "ventilator": thing(unit)})
		assert.Equal(t, want, got, "%s, %s: %s at %v of %s", h.ID, h.Name, rule, share, enough)
	}
}

// cubicMetres is a flow as a design gives it, with more digits than a report shows.
func cubicMetres(flow float64) string { return fmt.Sprintf("%.15f m3/s", flow) }

// Rates of single houses with and without the credit, each on both sides of its
// figure; the table of the 2010 edition is that of the IRC.
func TestDwellingUnitRateVerdicts(t *testing.T) {
	pack, former, irc := builtIn(t, ashrae), builtIn(t, "ashrae-62-2-2016"), builtIn(t, "irc-2021")
	ids := map[string]bool{}
	for _, h := range published[ashraeHouse](t, "rates/ashrae-62.2-houses.toml") {
		ids[h.ID] = true
		h.asked(t, pack, "dwelling-unit-rate", h.Total, map[string]any{}, rules.Fail)
		h.asked(t, pack, "rate-by-table", h.tableApart(), map[string]any{}, rules.Review)
		h.asked(t, pack, "dwelling-unit-rate", h.Balanced, map[string]any{}, rules.Fail)
		h.asked(t, pack, "dwelling-unit-rate", h.Unbalanced, map[string]any{"kind": "exhaust-fan"}, rules.Fail)
		h.asked(t, former, "dwelling-unit-rate", h.Capped, map[string]any{}, rules.Fail)
		h.asked(t, former, "dwelling-unit-rate", h.Capped, map[string]any{"kind": "exhaust-fan"}, rules.Fail)
		if h.Table != "" {
			equal(t, h.Table, look(t, pack.Tables["total_rate"].Part, parsed(t, h.FloorArea), float64(max(h.Bedrooms, 1))), h.ID)
		}
		if h.Earlier != "" {
			equal(t, h.Earlier, look(t, irc.Tables["whole_house_rate"].Part, parsed(t, h.FloorArea), float64(h.Bedrooms)), h.ID)
		}
	}
	assert.Len(t, ids, 11)
}

// tableApart is the figure of the table where it lies above that of the formula:
// only there can a flow meet the one and not the other.
func (h ashraeHouse) tableApart() string {
	if h.Table == h.Total {
		return ""
	}
	return h.Table
}

// Height factors by storeys, as printed: the credit of a balanced system follows
// them, within the two decimals of the print.
func TestHeightFactorsOfTheCredit(t *testing.T) {
	var file struct {
		Height []struct{ Storeys, Factor []float64 }
	}
	_, err := toml.DecodeFile(filepath.Join("..", "testdata", "published", "rates", "ashrae-62.2-houses.toml"), &file)
	require.NoError(t, err)
	require.Len(t, file.Height, 1)
	printed := file.Height[0]
	require.Len(t, printed.Storeys, 5)
	require.Len(t, printed.Factor, 5)
	pack := builtIn(t, ashrae)
	for i, storeys := range printed.Storeys {
		height := quantity.Length(storeys) * parsed(t, "8.2 ft").(quantity.Length)
		h := ashraeHouse{ID: "X-06", FloorArea: "2000 ft2", Bedrooms: 3, Flow50: "1000 cfm", WeatherFactor: 0.5,
			Height: fmt.Sprintf("%.9f m", height)}
		left := parsed(t, "90 cfm").(quantity.Flow) - quantity.Flow(0.052*0.5*printed.Factor[i])*parsed(t, "1000 cfm").(quantity.Flow)
		rounding := 0.006 * 0.052 * 0.5 * float64(parsed(t, "1000 cfm").(quantity.Flow)) / float64(left)
		h.Within = &rounding
		h.asked(t, pack, "dwelling-unit-rate", cubicMetres(float64(left)), map[string]any{}, rules.Fail)
	}
}
