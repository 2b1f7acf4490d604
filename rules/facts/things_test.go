package facts

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const inch = 0.0254

// only is an invented design of one thing with some lines.
func only(t *testing.T, kind, lines string) *Facts {
	t.Helper()
	d, problems := design.Load("one", []byte(bare+"[["+kind+"]]\nid = \"a\"\n"+lines))
	require.Empty(t, problems, lines)
	return Of(d)
}

// The share of time by definition, and what it takes to know it.
func TestShareOfTime(t *testing.T) {
	for lines, want := range map[string]any{
		`control = "continuous"`:                                                                    1.0,
		"control = \"timer\"\non_time = \"20 min\"\ncycle = \"1 h\"":                                1.0 / 3,
		"control = \"timer\"\non_time = \"20 min\"\ncycle = \"4 h\"\nminutes_per_hour = \"30 min\"": 1.0 / 12,
		"control = \"timer\"\nminutes_per_hour = \"30 min\"":                                        0.5,
		"":                  "ventilator.a.control",
		`control = "timer"`: "ventilator.a.minutes_per_hour",
		"control = \"timer\"\non_time = \"20 min\"": "ventilator.a.cycle",
	} {
		f := only(t, "ventilator", "kind = \"hrv\"\n"+lines)
		share, err := f.runShare(f.Design.Ventilators[0])
		if key, isKey := want.(string); isKey {
			assert.Equal(t, key, keyOf(t, err), lines)
			continue
		}
		require.NoError(t, err, lines)
		assert.InDelta(t, want, float64(share), 1e-12, lines)
	}
}

// The duct of IRC 2021, table M1504.2 note b: 10 in by 3-1/4 in has 4 A/P = 4.91 in.
func TestHydraulicDiameter(t *testing.T) {
	for lines, want := range map[string]any{
		`diameter = "6 in"`:                       6.0,
		"width = \"10 in\"\nheight = \"3.25 in\"": 4.91,
		"":                   "duct.a.diameter",
		`width = "10 in"`:    "duct.a.height",
		`height = "3.25 in"`: "duct.a.width",
	} {
		f := only(t, "duct", "airstream = \"exhaust-air\"\n"+lines)
		d, err := f.hydraulicDiameter(f.Design.Ducts[0])
		if key, isKey := want.(string); isKey {
			assert.Equal(t, key, keyOf(t, err), lines)
			continue
		}
		require.NoError(t, err, lines)
		assert.InDelta(t, want, float64(d)/inch, 0.005, lines)
	}
}

func TestVolumeOfARoom(t *testing.T) {
	for lines, want := range map[string]any{
		"area = \"120 ft2\"\nheight = \"8 ft\"": 960.0,
		`area = "120 ft2"`:                      "room.a.height",
		`height = "8 ft"`:                       "room.a.area",
	} {
		f := only(t, "room", "use = \"bedroom\"\n"+lines)
		v, err := f.roomVolume(f.Design.Rooms[0])
		if key, isKey := want.(string); isKey {
			assert.Equal(t, key, keyOf(t, err), lines)
			continue
		}
		require.NoError(t, err, lines)
		assert.InEpsilon(t, want, float64(v)/(foot*foot*foot), 1e-12, lines)
	}
}

const suite = bare + `
[[room]]
id = "bed"
use = "bedroom"
[[room]]
id = "bath"
use = "bathroom"
[[room]]
id = "hall"
use = "hallway"
[[terminal]]
id = "in"
airstream = "supply-air"
room = "bed"
[[terminal]]
id = "out"
airstream = "extract-air"
room = "bath"
[[terminal]]
id = "second"
airstream = "extract-air"
room = "bath"
`

// Which rooms have which terminals; one whose room is not said could be in any.
func TestTerminalsOfRooms(t *testing.T) {
	f := siteOf(t, suite)
	for i, want := range []struct {
		terminals       int
		supply, extract bool
	}{{1, true, false}, {2, false, true}, {0, false, false}} {
		room := f.Design.Rooms[i]
		list, err := f.terminalsIn(room)
		require.NoError(t, err)
		assert.Len(t, list, want.terminals, room.ID)
		supply, err := f.hasSupply(room)
		require.NoError(t, err)
		assert.Equal(t, want.supply, supply, room.ID)
		extract, err := f.hasExtract(room)
		require.NoError(t, err)
		assert.Equal(t, want.extract, extract, room.ID)
	}
	f = siteOf(t, suite+"[[terminal]]\nid = \"somewhere\"\nairstream = \"extract-air\"\n")
	bed, bath := f.Design.Rooms[0], f.Design.Rooms[1]
	_, err := f.terminalsIn(bed)
	assert.Equal(t, "terminal.somewhere.room", keyOf(t, err))
	_, err = f.hasExtract(bed)
	assert.Equal(t, "terminal.somewhere.room", keyOf(t, err))
	has, err := f.hasExtract(bath)
	require.NoError(t, err, "it has one, wherever the other is")
	assert.True(t, has)
	has, err = f.hasSupply(bed)
	require.NoError(t, err, "the other is no supply")
	assert.True(t, has)
}

// Both hoods of the corner house are 6 ft from it and 6 ft up, 6 in wide.
func TestPlacesOfOpenings(t *testing.T) {
	f := siteOf(t, corner)
	fresh, stale := f.Design.Openings[0], f.Design.Openings[1]
	straight, err := f.distance(fresh, stale)
	require.NoError(t, err)
	assert.InDelta(t, 8.4853, float64(straight)/foot, 0.0001) // 6 ft and 6 ft at a right angle
	level, err := f.horizontal(fresh, stale)
	require.NoError(t, err)
	assert.InDelta(t, 8.4853, float64(level)/foot, 0.0001)
	up, err := f.rise(fresh, stale)
	require.NoError(t, err)
	assert.InDelta(t, -0.5, float64(up)/foot, 1e-12, "bottom of one below the top of the other")
	same, err := f.sameWall(fresh, stale)
	require.NoError(t, err)
	assert.False(t, same)
	same, err = f.sameWall(fresh, fresh)
	require.NoError(t, err)
	assert.True(t, same)
	fresh.Wall = nil
	same, err = f.sameWall(fresh, fresh)
	require.NoError(t, err)
	assert.False(t, same, "what is on no wall shares none")
}

// A surface below counts where it is nearer than the ground.
func TestClearHeight(t *testing.T) {
	for lines, want := range map[string]float64{"": 5.75, "surface_below = \"2 ft\"\n": 3.75, "surface_below = \"-1 ft\"\n": 5.75} {
		f := siteOf(t, corner)
		o := f.Design.Openings[0]
		if lines != "" {
			f = only(t, "opening", "kind = \"intake\"\nabove_grade = \"6 ft\"\ndiameter = \"6 in\"\n"+lines)
			o = f.Design.Openings[0]
		}
		height, err := f.clearHeight(o)
		if err != nil {
			t.Fatal(lines, err)
		}
		assert.InDelta(t, want, float64(height)/foot, 1e-12, lines)
	}
	f := only(t, "opening", "kind = \"intake\"\nsurface_below = \"2 ft\"\n")
	_, err := f.clearHeight(f.Design.Openings[0])
	assert.Error(t, err)
}

func TestWhatOpeningsServe(t *testing.T) {
	source := corner + `
[[ventilator]]
id = "unit"
kind = "erv"
[[appliance]]
id = "clothes"
kind = "dryer"
`
	f := siteOf(t, source)
	fresh, stale := f.Design.Openings[0], f.Design.Openings[1]
	_, err := f.serves(fresh)
	assert.Equal(t, "opening.fresh.serves", keyOf(t, err))
	_, err = f.servesKind(fresh)
	assert.Equal(t, "opening.fresh.serves", keyOf(t, err))
	unit, clothes := "unit", "clothes"
	fresh.Serves, stale.Serves = &unit, &clothes
	for o, want := range map[*design.Opening][2]string{
		fresh: {`ventilator "unit" (erv)`, "erv"}, stale: {`appliance "clothes" (dryer)`, "dryer"},
	} {
		label, err := f.serves(o)
		require.NoError(t, err)
		kind, err := f.servesKind(o)
		require.NoError(t, err)
		assert.Equal(t, want, [2]string{label, string(kind)})
	}
	assert.Len(t, f.openings("intake"), 1)
	assert.Len(t, f.openings("exhaust"), 1)
	name, err := f.named(fresh)
	require.NoError(t, err)
	assert.Equal(t, design.Label(fresh), name)
}

func TestHalvesOfOneFitting(t *testing.T) {
	f := siteOf(t, corner)
	a, b := f.Design.Openings[0], f.Design.Openings[1]
	for _, c := range []struct {
		a, b *string
		same bool
	}{{nil, nil, false}, {new("cap"), nil, false}, {nil, new("cap"), false}, {new("cap"), new("cap"), true}, {new("cap"), new("hood"), false}} {
		a.Fitting, b.Fitting = c.a, c.b
		same, err := f.sameFitting(a, b)
		require.NoError(t, err)
		assert.Equal(t, c.same, same)
	}
}

// A reader is led to the keys that a distance rests on, and to no others.
func TestKeysOfADistance(t *testing.T) {
	f := siteOf(t, corner)
	var keys []string
	for _, read := range placeReads(f, []any{f.Design.Openings[0], q.Length(1), f.Design.Sources[0]}) {
		keys = append(keys, read.Ref.KeyName(read.Key))
	}
	assert.Equal(t, []string{"opening.fresh.from_left", "opening.fresh.above_grade", "opening.fresh.diameter", "opening.fresh.wall",
		"source.shed.at", "source.shed.level"}, keys)
}
