package rules_test

import (
	"bytes"
	"fmt"
	"maps"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// Balanced by the definition that the rate credit uses, not by the other one of
// the same edition (testdata/published/rates).
func TestBalanceVerdicts(t *testing.T) {
	type streams struct {
		Supply, Exhaust string
		A, B            bool
	}
	pack := builtIn(t, "irc-2021")
	apart := 0
	for _, c := range published[streams](t, "rates/irc-balance.toml") {
		want := rules.Fail
		if c.B {
			want = rules.Pass
		}
		if c.A != c.B {
			apart++
		}
		got := show(t, pack, "credit-balanced", "rates", map[string]any{
			"ventilator": thing(map[string]any{"id": "unit", "supply_flow": c.Supply, "extract_flow": c.Exhaust})})
		assert.Equal(t, want, got, "%+v", c)
	}
	assert.GreaterOrEqual(t, apart, 3, "cases that tell the two definitions apart")
}

// IRC 2021 table M1505.4.4: every cell, by the rules.
func TestLocalExhaustVerdicts(t *testing.T) {
	type cell struct{ Room, Mode, Expected string }
	pack := builtIn(t, "irc-2021")
	rooms := map[string]string{"kitchen": "kitchen", "bathroom": "bath", "toilet": "powder"}
	cells := published[cell](t, "rates/irc-local-exhaust.toml")
	assert.Len(t, cells, 6)
	for _, c := range cells {
		id := "bath-exhaust-flow"
		if c.Room == "kitchen" {
			id = "kitchen-exhaust-flow"
		}
		require.Contains(t, rooms, c.Room)
		flow := float64(parsed(t, c.Expected).(quantity.Flow))
		for share, want := range map[float64]rules.Outcome{1: rules.Pass, 0.999: rules.Fail} {
			exhaust := map[string]any{"mode": c.Mode, "flow": cubicMetres(flow * share), "discharge": "outdoors"}
			var text bytes.Buffer
			require.NoError(t, toml.NewEncoder(&text).Encode(map[string]any{
				"room": thing(map[string]any{"id": rooms[c.Room], "local_exhaust": exhaust})}))
			without := []string{}
			if c.Room == "toilet" {
				without = append(without, "terminal.from-powder")
			}
			run := pack.Run(pack.Rule(id), rules.Sample{Base: "rates", With: text.String(), Without: without})
			require.NoError(t, run.Err)
			assert.Equal(t, want, run.Got, "%+v at %v", c, share)
		}
	}
}

// opposite is one case of testdata/published/openings/irc-vectors.toml.
type opposite struct {
	ID, What                   string
	Distance, Horizontal, Rise *float64 // ft, rounded to 0.01 ft
	Outcome                    map[string]string
	Thing                      []map[string]any
}

// design puts the things of a case on one straight wall.
func (c opposite) design(t *testing.T) *design.Design {
	t.Helper()
	file := map[string]any{
		"format":   1,
		"project":  map[string]any{"name": c.ID, "stage": "final", "units": "IP"},
		"dwelling": map[string]any{"floor_area": "1200 ft2", "bedrooms": 2},
		"wall":     square("40 ft", "30 ft"),
	}
	for i, thing := range c.Thing {
		keys := maps.Clone(thing)
		keys["id"], keys["wall"] = fmt.Sprintf("thing-%d", i+1), "wall-1"
		table := keys["table"].(string)
		delete(keys, "table")
		list, _ := file[table].([]map[string]any)
		file[table] = append(list, keys)
	}
	var text bytes.Buffer
	require.NoError(t, toml.NewEncoder(&text).Encode(file))
	d, problems := design.Load(c.ID, text.Bytes())
	require.Empty(t, problems, c.ID)
	return d
}

// square is a footprint, counter-clockwise from the site datum.
func square(width, depth string) []map[string]any {
	corners := [][]string{{"0 ft", "0 ft"}, {width, "0 ft"}, {width, depth}, {"0 ft", depth}}
	var walls []map[string]any
	for i, from := range corners {
		walls = append(walls, map[string]any{"id": fmt.Sprintf("wall-%d", i+1), "from": from,
			"to": corners[(i+1)%len(corners)], "grade": "0 ft", "height": "18 ft"})
	}
	return walls
}

// verdict is the worst outcome of a rule over all its subjects.
func verdict(rule *rules.Compiled, f *facts.Facts) rules.Outcome {
	worst := rules.NotApplicable
	for _, j := range rule.Ask(f) {
		if j.Outcome.Worse(worst) {
			worst = j.Outcome
		}
	}
	return worst
}

// Distances between openings on and beside the limits of the IRC: what is
// measured, and what the rules say of it.
func TestOpeningVerdicts(t *testing.T) {
	pack := builtIn(t, "irc-2021")
	cases := published[opposite](t, "openings/irc-vectors.toml")
	assert.GreaterOrEqual(t, len(cases), 20)
	for _, c := range cases {
		f := facts.Of(c.design(t))
		c.measured(t, f)
		require.NotEmpty(t, c.Outcome, c.ID)
		for id, want := range c.Outcome {
			require.NotNil(t, pack.Rule(id), "%s: %s", c.ID, id)
			assert.Equal(t, want, string(verdict(pack.Rule(id), f)), "%s, %s: %s", c.ID, c.What, id)
		}
	}
}

// measured compares the distances between the first two things with the case's.
func (c opposite) measured(t *testing.T, f *facts.Facts) {
	t.Helper()
	first, second := f.Design.Find("thing-1"), f.Design.Find("thing-2")
	for _, m := range []struct {
		want *float64
		of   func(a, b any) (quantity.Length, error)
	}{{c.Distance, f.Site.Distance}, {c.Horizontal, f.Site.Horizontal}, {c.Rise, f.Site.Rise}} {
		if m.want == nil {
			continue
		}
		got, err := m.of(first, second)
		require.NoError(t, err, c.ID)
		assert.InDelta(t, *m.want, float64(got)/0.3048, 0.0051, "%s, %s", c.ID, c.What)
	}
}
