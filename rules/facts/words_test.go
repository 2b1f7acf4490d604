package facts

import (
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules/expression"
)

// Which appliances burn: the vent or the fuel decides, and without both it is open.
func TestWhatBurns(t *testing.T) {
	for lines, want := range map[string]string{
		`kind = "furnace"` + "\nvent = \"direct-vent\"":              "true",
		`kind = "furnace"` + "\nfuel = \"gas\"":                      "true",
		`kind = "furnace"` + "\nfuel = \"gas\"\nvent = \"unvented\"": "true",
		`kind = "furnace"` + "\nfuel = \"electric\"":                 "false",
		`kind = "furnace"`:                           "appliance.a.fuel",
		`kind = "stove"` + "\nvent = \"unvented\"":   "appliance.a.fuel",
		`kind = "range"`:                             "false",
		`kind = "range"` + "\nfuel = \"gas\"":        "false",
		`kind = "dryer"` + "\nvent = \"power-vent\"": "true",
		`kind = "kitchen-hood"`:                      "false",
		`kind = "air-handler"`:                       "false",
	} {
		d, problems := design.Load("a", []byte("format = 1\n[project]\nname = \"a\"\nstage = \"permit\"\nunits = \"IP\"\n[dwelling]\n[[appliance]]\nid = \"a\"\n"+lines))
		require.Empty(t, problems, lines)
		does, err := Of(d).ruleCombustion(d.Appliances[0])
		if strings.Contains(want, ".") {
			assert.Equal(t, want, keyOf(t, err), lines)
			continue
		}
		require.NoError(t, err, lines)
		assert.Equal(t, want == "true", does, lines)
	}
}

// A misspelt kind is told when a pack is loaded, not passed over.
func TestServedKindsAreWords(t *testing.T) {
	language, err := expression.New(Vocabulary())
	require.NoError(t, err)
	names := expression.Names{Variables: []expression.Variable{{Name: "outlet", Type: reflect.TypeFor[*design.Opening]()}}}
	for text, mistake := range map[string]string{
		`serves_kind(outlet) == "hrv"`:                 "",
		`serves_kind(outlet) == "dryer"`:               "",
		`serves_kind(outlet) == "drier"`:               `"drier"`,
		`not (serves_kind(outlet) in ["kichen-hood"])`: `"kichen-hood"`,
	} {
		_, err := language.Condition(text, names)
		if mistake == "" {
			assert.NoError(t, err, text)
			continue
		}
		assert.ErrorContains(t, err, mistake, text)
	}
}

func TestFiltersThatAreNotSpokenOf(t *testing.T) {
	f, unit := factsOf(t, flat)
	_, err := f.filters(unit)
	assert.Equal(t, "ventilator.unit.filter", keyOf(t, err))
	f, unit = factsOf(t, with("filter = []"))
	none, err := f.filters(unit)
	require.NoError(t, err)
	assert.Empty(t, none)
	f, unit = factsOf(t, with("filter = [{ merv = 8 }]"))
	one, err := f.filters(unit)
	require.NoError(t, err)
	assert.Len(t, one, 1)
}

func keyOf(t *testing.T, err error) string {
	t.Helper()
	var one *document.Missing
	require.ErrorAs(t, err, &one)
	return one.Ref.KeyName(one.Key)
}

// So is a misspelt side, setting or state.
func TestArgumentsAreWords(t *testing.T) {
	language, err := expression.New(Vocabulary())
	require.NoError(t, err)
	names := expression.Names{Variables: []expression.Variable{{Name: "unit", Type: reflect.TypeFor[*design.Ventilator]()}}}
	for text, hint := range map[string]string{
		`external_loss(unit, "suply") < 1 Pa`:                           `did you mean "supply"?`,
		`delivered(unit, "extrct") > 1 cfm`:                             `did you mean "extract"?`,
		`delivered(unit, "outdoors") > 1 cfm`:                           "it can be supply, extract",
		`delivered_at(unit, "supply", "bost") > 1 cfm`:                  `did you mean "boost"?`,
		`delivered_at(unit, "boost", "supply") > 1 cfm`:                 "it can be supply, extract",
		`critical_end(unit, "Supply") != ""`:                            `did you mean "supply"?`,
		`on_fan_curve(unit, "supply-air")`:                              "",
		`on_fan_curve_at(unit, "extract", "maximun")`:                   `did you mean "maximum"?`,
		`on_fan_curve_at(unit, "extract", unit.name)`:                   "it can be normal, low, boost, maximum",
		`house_pressure("supply fan stoped") < 0 Pa`:                    `did you mean "supply fan stopped"?`,
		`any(["low", "bost"], delivered_at(unit, "supply", #) > 1 cfm)`: `did you mean "boost"?`,
	} {
		_, err := language.Condition(text, names)
		var mistake *expression.Error
		require.ErrorAs(t, err, &mistake, text)
		if hint != "" {
			assert.Equal(t, hint, mistake.Hint, text)
		}
	}
	_, err = language.Condition(`all(["normal", "boost"], delivered_at(unit, "supply", #) > 1 cfm) and house_pressure("defrost") < 0 Pa`, names)
	assert.NoError(t, err)
}
