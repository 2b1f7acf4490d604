package design_test

import (
	"os"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
)

const everyKey = "testdata/every-key.vent.toml"

func read(t testing.TB, file string) string {
	source, err := os.ReadFile(file)
	require.NoError(t, err)
	return string(source)
}

// loaded loads a design that must have no mistake.
func loaded(t testing.TB, source string) *design.Design {
	d, problems := design.Load("test.vent.toml", []byte(source))
	require.Empty(t, problems)
	return d
}

// The file sets every key of the model somewhere, so no key goes untested.
func TestEveryKeyLoads(t *testing.T) {
	d := loaded(t, read(t, everyKey))
	given := map[string]bool{}
	collect(reflect.ValueOf(d).Elem(), given)
	for key, ok := range given {
		require.True(t, ok, "key %s is not in %s", key, everyKey)
	}
	require.Greater(t, len(given), 250)

	require.InDelta(t, 2150*0.3048*0.3048, float64(*d.Dwelling.FloorArea), 1e-9)
	require.InDelta(t, 30*0.3048, float64(d.Walls[3].From.Y), 1e-9)
	require.Equal(t, design.Stage("permit"), d.Project.Stage)
	require.Equal(t, 2, len(d.Ventilators[0].SupplyFan))
	require.Equal(t, 13, *d.Ventilators[0].Filters[0].MERV)
}

// collect notes for each key of each struct whether any table gives it.
func collect(v reflect.Value, given map[string]bool) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			collect(v.Elem(), given)
		}
	case reflect.Slice:
		for i := range v.Len() {
			collect(v.Index(i), given)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			field := v.Type().Field(i)
			key, _, _ := strings.Cut(field.Tag.Get("toml"), ",")
			switch {
			case field.Anonymous && field.Type != reflect.TypeFor[document.Ref]():
				collect(v.Field(i), given)
			case key != "" && key != "-":
				name := v.Type().Name() + "." + key
				given[name] = given[name] || !v.Field(i).IsZero()
				collect(v.Field(i), given)
			}
		}
	}
}

var oneLineKey = regexp.MustCompile(`^([a-z0-9_]+) = `)

// A design without an optional key is a design that does not say: rules ask for
// what they need, the loader does not.
func TestTakingAnOptionalKeyAwayIsNoMistake(t *testing.T) {
	lines := strings.SplitAfter(read(t, everyKey), "\n")
	taken := 0
	for i, line := range lines {
		key := oneLineKey.FindStringSubmatch(line)
		if key == nil {
			continue
		}
		without := strings.Join(lines[:i], "") + strings.Join(lines[i+1:], "")
		_, problems := design.Load("test.vent.toml", []byte(without))
		if len(problems) == 0 {
			taken++
			continue
		}
		require.Contains(t, []string{"format", "name", "stage", "units", "id", "kind", "use", "airstream", "between", "rule", "reason", "by"}, key[1], "line %d: %v", i+1, problems)
		require.True(t, slices.ContainsFunc(problems, func(p document.Problem) bool { return p.Message == `missing key "`+key[1]+`"` }))
	}
	require.Greater(t, taken, 220)
}

func TestLinksLeadToThings(t *testing.T) {
	d := loaded(t, read(t, everyKey))
	require.Same(t, d.Walls[0], d.Openings[0].Wall.Target())
	require.Same(t, d.Rooms[0], d.Ventilators[0].Room.Target())
	require.Same(t, d.Rooms[1], d.Terminals[0].Room.Target())
	require.Same(t, d.Rooms[1], d.Appliances[0].Room.Target())
	require.Same(t, d.Terminals[0], d.Commissioning.Measured[0].Terminal.Target())
	require.Nil(t, d.Openings[1].Wall.Target(), "it is on the roof")
	require.Nil(t, (&design.Link[design.Room]{ID: "bath"}).Target(), "a link that was not loaded")
}

func TestLinksTakeTextAlone(t *testing.T) {
	var l design.Link[design.Room]
	require.NoError(t, l.UnmarshalTOML("bath"))
	require.Equal(t, "bath", l.ID)
	require.EqualError(t, l.UnmarshalTOML(int64(3)), "found 3, expected the id of another thing in quotes")
}

func TestFind(t *testing.T) {
	d := loaded(t, read(t, everyKey))
	require.Same(t, d.Openings[0], d.Find("fresh"))
	require.Same(t, d.Ducts[1], d.Find("flat"))
	require.Nil(t, d.Find("nothing"))
	require.Len(t, d.Things(), 18)
	for _, thing := range d.Things() {
		text, ok := design.Refer(thing).Text("id")
		require.True(t, ok)
		require.Same(t, thing, d.Find(text.Value))
	}
}

func TestLabels(t *testing.T) {
	d := loaded(t, read(t, everyKey))
	for label, thing := range map[string]any{
		`room "bath" (bathroom)`:                d.Rooms[1],
		`wall "south"`:                          d.Walls[0],
		`line "west-lot" (lot-line)`:            d.Lines[0],
		`window "window"`:                       d.BuildingOpenings[0],
		`intake "fresh"`:                        d.Openings[0],
		`exhaust "stale"`:                       d.Openings[1],
		`source "flue" (flue)`:                  d.Sources[0],
		`ventilator "unit" (erv)`:               d.Ventilators[0],
		`terminal "bath-extract" (extract-air)`: d.Terminals[0],
		`duct "flat" (exhaust-air)`:             d.Ducts[1],
		`appliance "range-hood" (kitchen-hood)`: d.Appliances[0],
		"ventilator[1].filter[1]":               d.Ventilators[0].Filters[0],
		"dwelling.leakage":                      d.Dwelling.Leakage,
		"commissioning":                         d.Commissioning,
		"design":                                d,
	} {
		require.Equal(t, label, design.Label(thing))
	}
	require.Equal(t, "design", design.Label(3), "what stands nowhere")
}

func TestRefer(t *testing.T) {
	d := loaded(t, read(t, everyKey))
	require.Equal(t, "opening[1]", design.Refer(d.Openings[0]).Path())
	require.Equal(t, "opening[1].at", d.Openings[0].Ref.KeyPath("at"), "the key, not the field At")
	require.Equal(t, "ventilator[1].supply_fan[2]", design.Refer(&d.Ventilators[0].SupplyFan[1]).Path())
	require.Zero(t, design.Refer(d.Walls[0].From))
	require.Zero(t, design.Refer("text"))
}

func TestSystemsOfUnits(t *testing.T) {
	source := strings.Replace(read(t, everyKey), `units = "IP"`, `units = "SI"`, 1)
	_, problems := design.Load("test.vent.toml", []byte(strings.Replace(source, `from_left = "3 ft"`, `from_left = "2 in"`, 1)))
	require.Len(t, problems, 1)
	require.Equal(t, `reaches from -25.4 mm to 127 mm along wall "south", expected within 0 and 12.192 m`, problems[0].Message)
}
