package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/rules"
)

// edition is one situation that passes in one edition and fails in another.
type edition struct {
	name    string
	rule    string
	base    string
	with    string
	without []string
	want    map[string]rules.Outcome
}

func (e edition) check(t *testing.T) {
	t.Helper()
	for id, want := range e.want {
		pack := builtIn(t, id)
		rule := pack.Rule(e.rule)
		require.NotNil(t, rule, "%s: %s in %s", e.name, e.rule, id)
		run := pack.Run(rule, rules.Sample{Base: e.base, With: e.with, Without: e.without})
		require.NoError(t, run.Err, e.name)
		assert.Equal(t, want, run.Got, "%s by %s", e.name, id)
	}
}

// every gives one outcome for all packs of the family.
func every(outcome rules.Outcome) map[string]rules.Outcome {
	return map[string]rules.Outcome{"irc-2018": outcome, "irc-2021": outcome, "irc-2024": outcome, "washington-2021": outcome}
}

// but takes some packs out of the line.
func but(want map[string]rules.Outcome, outcome rules.Outcome, packs ...string) map[string]rules.Outcome {
	for _, id := range packs {
		want[id] = outcome
	}
	return want
}

// Distances that an edition releases or counts: M1504.3 and M1502.3 of the IRC of
// 2018, 2021 and 2024, and the Washington text of 2021.
func TestEditionsOfOpenings(t *testing.T) {
	twin := `opening = [{ id = "fresh", fitting = "twin", fitting_listed = true }, { id = "stale", fitting = "twin", from_left = "9 ft 2 in" }]`
	soffit := `
source = [{ id = "dryer-outlet", kind = "dryer", point = true, wall = "north", from_left = "28 ft", above_grade = "5 ft" }]
building_opening = [{ id = "slot", kind = "soffit-vent", wall = "north", from_left = "30 ft 8 in", above_grade = "5 ft", width = "1 ft", height = "2 in" }]`
	cases := []edition{
		{"exhaust 1 ft straight above an operable window", "exhaust-off-operable-openings", "openings",
			`opening = [{ id = "stale", from_left = "34 ft", above_grade = "8 ft 3 in" }]`, nil, but(every(rules.Fail), rules.Pass, "irc-2024")},
		{"exhaust 11.9 in above an operable window and 2 ft aside", "exhaust-off-operable-openings", "openings",
			`opening = [{ id = "stale", from_left = "30 ft 3 in", above_grade = "8 ft 2.9 in" }]`, nil, every(rules.Fail)},
		{"exhaust 2 ft from a window that does not open", "exhaust-off-operable-openings", "openings",
			`building_opening = [{ id = "bedroom-window", operable = false, from_left = "27 ft 9 in" }]`, []string{"building_opening.side-door"}, every(rules.NotApplicable)},
		{"halves of one combination fitting 8 in apart, air of the living space", "combination-fitting-halves", "openings",
			twin, nil, but(every(rules.Fail), rules.Pass, "irc-2024", "washington-2021")},
		{"the same fitting, where the air is not said", "combination-fitting-halves", "openings",
			twin, []string{"opening.stale.air_from"}, but(every(rules.Fail), rules.Open, "irc-2024", "washington-2021")},
		{"soffit vent 2 ft from a dryer's outlet", "dryer-outlet-off-openings", "openings",
			soffit, nil, but(every(rules.Fail), rules.Pass, "irc-2018")},
		{"intake 9 ft 11.9 in from the exhaust", "intake-exhaust-distance", "openings",
			`opening = [{ id = "stale", from_left = "18 ft 5.9 in" }]`, nil, every(rules.Fail)},
	}
	for _, c := range cases {
		c.check(t)
	}
}

// Rates of one house, 2000 ft2 with three bedrooms: 50 cfm by the equation, 60 cfm
// by the table. The credit is in the IRC of 2021 and 2024 and not in that of 2018,
// whose run-time factor stands on the table alone; Washington has coefficients
// instead. The figures are arithmetic on M1505.4.3 of each.
func TestEditionsOfRates(t *testing.T) {
	flow := func(cfm, more string) string {
		return `dwelling.leakage.air_changes_50 = "3 ACH"
ventilator = [{ id = "unit", supply_flow = "` + cfm + ` cfm", extract_flow = "` + cfm + ` cfm"` + more + ` }]`
	}
	half := `, control = "timer", minutes_per_hour = "30 min"`
	cases := []edition{
		{"the credited rate", "whole-house-rate", "rates", flow("35", ""), nil, but(every(rules.Fail), rules.Pass, "irc-2021", "irc-2024")},
		{"just under the credited rate", "whole-house-rate", "rates", flow("34.9", ""), nil, every(rules.Fail)},
		{"the equation", "whole-house-rate", "rates", flow("50", ""), nil, every(rules.Pass)},
		{"the credited rate, on for half of the time", "whole-house-rate", "rates", flow("70", half), nil, but(every(rules.Fail), rules.Pass, "irc-2021", "irc-2024")},
		{"the equation, on for half of the time", "whole-house-rate", "rates", flow("100", half), nil, but(every(rules.Pass), rules.Fail, "irc-2018")},
		{"the table, on for half of the time", "whole-house-rate", "rates", flow("120", half), nil, every(rules.Pass)},
		{"a bedroom without air of its own", "whole-house-rate", "rates", flow("62.4", ""), []string{"terminal.into-bed-2"}, but(every(rules.Pass), rules.Fail, "washington-2021")},
		{"one hour in four", "run-time-of-each-segment", "rates", `ventilator = [{ id = "unit", control = "timer", on_time = "1 h", cycle = "4 h" }]`, nil, but(every(rules.Pass), rules.Fail, "washington-2021")},
		{"a dwelling that tests at 5.1 air changes an hour", "whole-house-rate", "rates",
			`dwelling.leakage.air_changes_50 = "5.1 ACH"`, []string{"ventilator.unit"}, but(every(rules.Fail), rules.NotApplicable, "irc-2018")},
	}
	for _, c := range cases {
		c.check(t)
	}
}

// The credit of ASHRAE 62.2 in 2016 and in 2019, for a house of 90 cfm whose leaks
// earn 41 cfm: the older edition makes no difference between balanced and other
// systems, and takes at most two thirds off. The sources of
// both forms are in the packs.
func TestEditionsOfTheCredit(t *testing.T) {
	leaky := `dwelling = { leakage = { flow_50 = "3000 cfm", weather_factor = 1.5 } }` + "\n"
	unit := func(kind, cfm string) string {
		return `ventilator = [{ id = "unit", kind = "` + kind + `", supply_flow = "` + cfm + ` cfm", extract_flow = "` + cfm + ` cfm" }]`
	}
	both := func(older, newer rules.Outcome) map[string]rules.Outcome {
		return map[string]rules.Outcome{"ashrae-62-2-2016": older, "ashrae-62-2-2019": newer}
	}
	cases := []edition{
		{"the total rate", "dwelling-unit-rate", "house", unit("hrv", "90"), nil, both(rules.Pass, rules.Pass)},
		{"an extract fan with what a balanced system may leave", "dwelling-unit-rate", "house", unit("exhaust-fan", "50"), nil, both(rules.Pass, rules.Fail)},
		{"a supply fan with as much", "dwelling-unit-rate", "house", unit("supply-fan", "50"), nil, both(rules.Pass, rules.Fail)},
		{"a balanced system with as much", "dwelling-unit-rate", "house", unit("hrv", "50"), nil, both(rules.Pass, rules.Pass)},
		{"between the coefficients of both forms", "dwelling-unit-rate", "house", unit("hrv", "48.7"), nil, both(rules.Pass, rules.Fail)},
		{"a leaky house with less than a third of the rate", "dwelling-unit-rate", "house", leaky + unit("hrv", "29"), nil, both(rules.Fail, rules.Pass)},
		{"less than both leave", "dwelling-unit-rate", "house", unit("hrv", "48"), nil, both(rules.Fail, rules.Fail)},
	}
	for _, c := range cases {
		c.check(t)
	}
}

// The energy chapter of 2018 and 2021: table N1103.6.1 of the one and N1103.6.2 of
// the other, N1103.3.1 of both, N1102.4.1.2 and .3.
func TestEditionsOfTheEnergyChapter(t *testing.T) {
	unit := func(kind, cfm, watts string) string {
		return `ventilator = [{ id = "unit", kind = "` + kind + `", supply_flow = "` + cfm + ` cfm", extract_flow = "` + cfm + ` cfm", power = "` + watts + ` W" }]`
	}
	duct := func(place, insulation string) string {
		return `duct = [{ id = "supply-run", place = "` + place + `", insulation = "` + insulation + `" }]`
	}
	leaks := func(zone, changes string) string {
		return `dwelling = { climate_zone = "` + zone + `", leakage = { air_changes_50 = "` + changes + ` ACH" } }`
	}
	both := func(older, newer rules.Outcome) map[string]rules.Outcome {
		return map[string]rules.Outcome{"iecc-2018": older, "iecc-2021": newer}
	}
	inCeiling := []string{"duct.extract-run"}
	cases := []edition{
		{"an in-line exhaust fan of 3 cfm for each watt", "in-line-fan-efficacy", "house", unit("exhaust-fan", "90", "30"), nil, both(rules.Pass, rules.Fail)},
		{"a bath fan of 60 cfm, 2 cfm for each watt", "exhaust-fan-efficacy", "house", unit("exhaust-fan", "60", "30"), inCeiling, both(rules.Pass, rules.Fail)},
		{"a bath fan of 90 cfm, 3 cfm for each watt", "exhaust-fan-efficacy", "house", unit("exhaust-fan", "90", "30"), inCeiling, both(rules.Pass, rules.Fail)},
		{"a bath fan of 9 cfm, 3 cfm for each watt", "exhaust-fan-efficacy", "house", unit("exhaust-fan", "9", "3"), inCeiling, both(rules.Review, rules.Pass)},
		{"balanced fans of 1.1 cfm for each watt", "recovery-efficacy", "house", unit("balanced-fans", "66", "60"), nil, both(rules.NotApplicable, rules.Fail)},
		{"recovery of 1.1 cfm for each watt", "recovery-efficacy", "house", unit("hrv", "66", "60"), nil, both(rules.Fail, rules.Fail)},
		{"a duct with R-6 in a crawl space", "outside-duct-insulation", "house", duct("crawl-space", "R-6"), nil, both(rules.Pass, rules.Fail)},
		{"a duct with R-6 in an attic", "outside-duct-insulation", "house", duct("attic", "R-6"), nil, both(rules.Fail, rules.Fail)},
		{"5 air changes an hour in zone 2", "envelope-leakage", "house", leaks("2A", "5"), nil, both(rules.Pass, rules.Pass)},
		{"3.1 air changes an hour in zone 4", "envelope-leakage-prescriptive", "house", leaks("4A", "3.1"), nil, both(rules.Review, rules.Review)},
		{"5.1 air changes an hour in zone 4", "envelope-leakage", "house", leaks("4A", "5.1"), nil, both(rules.NotApplicable, rules.Review)},
	}
	for _, c := range cases {
		c.check(t)
	}
	assert.Equal(t, rules.Error, builtIn(t, "iecc-2018").Rule("envelope-leakage-prescriptive").Level)
	assert.Equal(t, rules.Note, builtIn(t, "iecc-2021").Rule("envelope-leakage-prescriptive").Level)
}

// Ontario before 2025 (O. Reg. 332/12), the national code of 2020 and Ontario from
// 2025 on it: 9.32.3.3, 9.32.3.11 and 9.32.3.13 of the later two, and the articles of
// the same subjects in the older one. Its table of rates is from memory.
func TestEditionsOfOntario(t *testing.T) {
	every := func(older, newer rules.Outcome) map[string]rules.Outcome {
		return map[string]rules.Outcome{"ontario-2012": older, "nbc-2020": newer, "ontario-2024": newer}
	}
	kitchen := func(height string) string {
		return `room = [{ id = "kitchen", height = "2.4 m" }]
terminal = [{ id = "from-bath", room = "kitchen", above_floor = "` + height + `" }]`
	}
	corner := `opening = [{ id = "fresh", from_left = "0.2 m" }, { id = "stale", wall = "west", from_left = "7.5 m" }]`
	cases := []edition{
		{"an intake 900 mm from a flue", "intake-off-vents-and-fill-pipes", "house", `source = [{ id = "flue", from_left = "3.05 m" }]`, nil, every(rules.Pass, rules.Fail)},
		{"an intake 1800 mm from a flue", "intake-off-vents-and-fill-pipes", "house", `source = [{ id = "flue", from_left = "3.95 m" }]`, nil, every(rules.Pass, rules.Pass)},
		{"an intake 450 mm above the ground", "intake-height", "house", `opening = [{ id = "fresh", above_grade = "550 mm" }]`, nil, every(rules.Pass, rules.Pass)},
		{"25 L/s for three bedrooms", "principal-fan-least", "house", `ventilator = [{ id = "unit", extract_flow = "25 L/s" }]`, nil, every(rules.Fail, rules.Pass)},
		{"a kitchen intake 350 mm under the ceiling", "exhaust-intake-height", "house", kitchen("2.05 m"), nil, every(rules.Fail, rules.Pass)},
		{"a bathroom intake 1.9 m above the floor", "exhaust-intake-height", "house", `terminal = [{ id = "from-bath", above_floor = "1.9 m" }]`, nil, every(rules.NotApplicable, rules.Fail)},
		{"a cold duct of 2 m without a vapour barrier", "outdoor-air-duct-insulation", "house", `duct = [{ id = "fresh-run", length = "2 m", vapor_retarder = false }]`, nil, every(rules.Pass, rules.Fail)},
		{"a cold duct of 5 m with one", "outdoor-air-duct-insulation", "house", ``, nil, every(rules.Review, rules.Pass)},
		{"the unit's own exhaust near, around a corner", "ventilator-outlet-off-intake", "house", corner, []string{"opening.damp"}, every(rules.NotApplicable, rules.Review)},
		{"measured outdoor air an eighth apart", "measured-outdoor-air-balance", "house", `commissioning = { supply_flow = "21 L/s", extract_flow = "24 L/s" }`, nil, every(rules.Review, rules.Fail)},
	}
	for _, c := range cases {
		c.check(t)
	}
	older, newer := builtIn(t, "ontario-2012"), builtIn(t, "ontario-2024")
	for _, id := range []string{"principal-fan-turn-down", "recovery-in-the-cold", "solid-fuel-intake-first", "exhaust-screen-mesh"} {
		assert.NotNil(t, older.Rule(id), id)
		assert.Nil(t, newer.Rule(id), id)
	}
	for _, id := range []string{"principal-fan-most", "moist-outlet-off-intake", "screened-opening-area"} {
		assert.Nil(t, older.Rule(id), id)
		assert.NotNil(t, newer.Rule(id), id)
	}
}

// What an edition does not ask is switched off, with a reason.
func TestEditionsSwitchOff(t *testing.T) {
	for id, want := range map[string][]string{
		"irc-2018":        {"credit-balanced", "credit-direct-supply", "control-marking", "bath-fan-rating"},
		"washington-2021": {"credit-balanced", "credit-direct-supply", "bath-fan-rating"},
		"iecc-2018": {"efficacy-rating-pressure", "recovery-in-cold-zones", "recovery-efficiency", "recovery-balanced",
			"installed-flow-measured", "flow-reported"},
	} {
		pack := builtIn(t, id)
		off := map[string]string{}
		for _, o := range pack.Off {
			off[o.Rule] = o.Reason
		}
		for _, rule := range want {
			assert.Nil(t, pack.Rule(rule), "%s in %s", rule, id)
			assert.NotEmpty(t, off[rule], "%s in %s", rule, id)
		}
		assert.Len(t, off, len(want), id)
	}
}
