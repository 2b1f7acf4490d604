package facts

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Outdoor air of 5 F: 9/5 of a degree for each kelvin, so that figures are by hand.
func TestAirBeforeTheCore(t *testing.T) {
	const ice, degree = 273.15, 5.0 / 9
	at := func(f float64) float64 { return ice + (f-32)*degree }
	for lines, want := range map[string]float64{
		``:                                   5,
		`frost_protection = "recirculation"`: 5,
		`frost_protection = "preheat"` + "\nfrost_protection_to = \"-10 F\"\npreheat_to = \"30 F\"": 30,
		`frost_protection = "preheat"` + "\nfrost_protection_to = \"15 F\"\npreheat_to = \"30 F\"":  20, // 15 F of rise, no more
		`frost_protection = "preheat"` + "\nfrost_protection_to = \"-10 F\"\npreheat_to = \"0 F\"":  5,
		"frost_protection_to = \"5 F\"\npreheat_to = \"23 F\"":                                      23,
	} {
		f, unit := factsOf(t, with(lines))
		got, err := f.ruleEntering(unit)
		require.NoError(t, err, lines)
		assert.InDelta(t, at(want), float64(got), 1e-9, lines)
	}
	f, unit := factsOf(t, with(`frost_protection = "preheat"`))
	_, err := f.ruleWinterSupply(unit)
	assert.Equal(t, []string{"ventilator.unit.preheat_to", "ventilator.unit.frost_protection_to"}, missingKeys(t, err))
}

// By the definition of effectiveness, a preheater that takes half of the way to
// room temperature halves what supply air lacks of it.
func TestPreheatWarmsSupplyAir(t *testing.T) {
	bare, unit := factsOf(t, flat)
	cold, err := bare.ruleWinterSupply(unit)
	require.NoError(t, err)
	f, unit := factsOf(t, with("frost_protection = \"preheat\"\nfrost_protection_to = \"-10 F\"\npreheat_to = \"37.5 F\""))
	warm, err := f.ruleWinterSupply(unit)
	require.NoError(t, err)
	room := q.Temperature(273.15 + (70-32)*5.0/9)
	assert.InDelta(t, float64(room-cold)/2, float64(room-warm), 0.02) // moist air holds a little more heat

	power, err := f.preheatPower(unit).get()
	require.NoError(t, err)
	dryAir := float64(in(60)) * 1.1918 // kg/s at 70 F and 35 %: 0.839 m3 for each kg
	assert.InEpsilon(t, dryAir*1009*32.5*5/9, float64(power), 0.005)
	onset, err := f.ruleFrostOnset(unit)
	require.NoError(t, err)
	margin, err := f.frostMargin(unit).get()
	require.NoError(t, err)
	assert.InDelta(t, 273.15+(37.5-32)*5/9-float64(onset), float64(margin), 1e-9)
}

func TestPreheatHasLinesWhereThereIsOne(t *testing.T) {
	names := func(source string) string {
		f, _ := factsOf(t, source)
		var all []string
		for _, l := range f.coreLines() {
			all = append(all, l.Name)
		}
		return strings.Join(all, "; ")
	}
	assert.NotContains(t, names(flat), "preheater")
	assert.Contains(t, names(with(`preheat_to = "30 F"`)), "heat of the preheater")
}
