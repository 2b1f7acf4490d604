package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// beside are flows on a limit and a thousandth below it, with their outcome.
var beside = map[quantity.Flow]rules.Outcome{1: rules.Pass, 0.999: rules.Fail}

// England, paragraph 1.24 and Table 1.3: on the rate and just below it.
func TestWholeDwellingRateOfEngland(t *testing.T) {
	type house struct {
		Bedrooms  int
		FloorArea string `toml:"floor_area"`
		Expected  string
	}
	pack := builtIn(t, "england-adf-2021")
	houses := published[house](t, "rates/england-whole-dwelling.toml")
	assert.Len(t, houses, 16)
	for _, h := range houses {
		rate := parsed(t, h.Expected).(quantity.Flow)
		for share, want := range beside {
			flow := exact(rate * share)
			with := map[string]any{"dwelling": map[string]any{"bedrooms": h.Bedrooms, "floor_area": h.FloorArea},
				"ventilator": thing(map[string]any{"id": "unit", "extract_flow": flow, "supply_flow": flow})}
			assert.Equal(t, want, show(t, pack, "whole-dwelling-extract", "house", with), "%+v at %v", h, share)
			assert.Equal(t, want, show(t, pack, "whole-dwelling-supply", "house", with), "%+v at %v", h, share)
		}
	}
}

// England, Tables 1.1 and 1.2: every row, on the rate and just below it.
func TestWetRoomExtractOfEngland(t *testing.T) {
	type room struct {
		Room, Mode, Expected string
		Hood                 bool
	}
	pack := builtIn(t, "england-adf-2021")
	rows := published[room](t, "rates/england-extract.toml")
	assert.Len(t, rows, 9)
	for _, r := range rows {
		for share, want := range beside {
			exhaust := map[string]any{"flow": exact(parsed(t, r.Expected).(quantity.Flow) * share), "mode": r.Mode}
			with := map[string]any{"room": thing(map[string]any{"id": r.Room, "local_exhaust": exhaust})}
			if r.Hood {
				with["appliance"] = thing(map[string]any{"id": "hood", "kind": "kitchen-hood", "discharge": "outdoors"})
			}
			assert.Equal(t, want, show(t, pack, "wet-room-fan", "intermittent", with), "%+v at %v", r, share)
		}
	}
}

// Table 1.2 for terminals of a ventilator.
func TestWetRoomTerminalsOfEngland(t *testing.T) {
	type room struct{ Room, Mode, Expected string }
	pack := builtIn(t, "england-adf-2021")
	asked := 0
	for _, r := range published[room](t, "rates/england-extract.toml") {
		if r.Mode != "continuous" {
			continue
		}
		asked++
		for share, want := range beside {
			outlet := map[string]any{"id": "from-" + r.Room, "flow": exact(parsed(t, r.Expected).(quantity.Flow) * share)}
			level := map[string]any{"extract_flow": "40 L/s"}
			with := map[string]any{"terminal": thing(outlet), "ventilator": thing(map[string]any{"id": "unit", "boost": level})}
			assert.Equal(t, want, show(t, pack, "wet-room-high-rate", "house", with), "%+v at %v", r, share)
		}
	}
	assert.Equal(t, 4, asked)
}
