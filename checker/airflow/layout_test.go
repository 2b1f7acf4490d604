package airflow

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func bare(id, from, to string) Run { return Run{ID: id, From: from, To: to} }

func TestLayoutFaults(t *testing.T) {
	unit, room := bare("a", "unit", "room"), []End{{ID: "room"}}
	for name, c := range map[string]struct {
		runs []Run
		ends []End
		want string
	}{
		"no runs":      {nil, room, `"unit": there are no runs`},
		"no name":      {[]Run{bare("", "unit", "room")}, room, `"": needs a name, and a run two different nodes`},
		"no node":      {[]Run{bare("a", "unit", "")}, room, `"a": needs a name, and a run two different nodes`},
		"to itself":    {[]Run{bare("a", "room", "room")}, room, `"a": needs a name, and a run two different nodes`},
		"nameless end": {[]Run{unit}, []End{{}}, `"": needs a name, and a run two different nodes`},
		"same run":     {[]Run{unit, unit}, room, `"a": stands for more than one run or end`},
		"same end":     {[]Run{unit}, append(room, room...), `"room": stands for more than one run or end`},
		"end and run":  {[]Run{unit}, []End{{ID: "room"}, {ID: "a"}}, `"a": stands for more than one run or end`},
		"end is fan":   {[]Run{unit}, []End{{ID: "room"}, {ID: "unit"}}, `"unit": stands for more than one run or end`},
		"two ways":     {[]Run{unit, bare("b", "unit", "room")}, room, `"b", "a": form a loop, expected a tree around the fan`},
		"ring":         {[]Run{unit, bare("b", "room", "x"), bare("c", "x", "y"), bare("d", "y", "room")}, room, `"d", "c", "b": form a loop, expected a tree around the fan`},
		"through fan":  {[]Run{bare("in", "out", "unit"), unit, bare("short", "room", "out")}, append(room, End{ID: "out"}), `"short", "a", "in": form a loop, expected a tree around the fan`},
		"loop apart":   {[]Run{unit, bare("b", "x", "y"), bare("c", "y", "x")}, room, `"c", "b": form a loop, expected a tree around the fan`},
		"against":      {[]Run{unit, bare("b", "x", "room")}, append(room, End{ID: "x"}), `"b", "a": blows against the run that it joins`},
		"against in":   {[]Run{bare("in", "tee", "unit"), bare("b", "tee", "out")}, []End{{ID: "out"}}, `"b", "in": blows against the run that it joins`},
		"dangling":     {[]Run{unit, bare("b", "room", "nowhere")}, room, `"b", "nowhere": leads to no opening, terminal or other run`},
		"no ends":      {[]Run{unit}, nil, `"a", "room": leads to no opening, terminal or other run`},
		"run apart":    {[]Run{unit, bare("b", "x", "y")}, append(room, End{ID: "y"}), "\"b\": is not connected with the fan\n\"y\": is not connected with the fan"},
		"end apart":    {[]Run{unit}, append(room, End{ID: "attic"}), `"attic": is not connected with the fan`},
		"two dangling": {[]Run{unit, bare("b", "unit", "c")}, nil, "\"a\", \"room\": leads to no opening, terminal or other run\n\"b\", \"c\": leads to no opening, terminal or other run"},
	} {
		_, err := NewSystem(StandardAir(), "unit", c.runs, c.ends)
		require.EqualError(t, err, c.want, name)
		var layout *LayoutError
		require.ErrorAs(t, err, &layout, name)
		assert.NotEmpty(t, layout.IDs, name)
	}
}

func TestTooManyRuns(t *testing.T) {
	var runs []Run
	for i := range mostRuns + 1 {
		runs = append(runs, bare(fmt.Sprint(i), "unit", fmt.Sprint("node", i)))
	}
	_, err := NewSystem(StandardAir(), "unit", runs, nil)
	var layout *LayoutError
	require.ErrorAs(t, err, &layout)
	assert.Equal(t, TooManyRuns, layout.Fault)
}

// TestSizesThatAreJustAllowed: 1000 runs, and twice as many ends, which is more than
// they can have.
func TestSizesThatAreJustAllowed(t *testing.T) {
	runs, ends := make([]Run, mostRuns), make([]End, 2*mostRuns)
	for i := range runs {
		runs[i] = bare(fmt.Sprint("run", i), "unit", fmt.Sprint("node", i))
	}
	for i := range ends {
		ends[i] = End{ID: fmt.Sprint("node", i)}
	}
	require.NoError(t, checkNames("unit", runs, ends))
	assert.ErrorContains(t, checkNames("unit", runs, append(ends, End{ID: "more"})), "more than 1000 runs")
	_, err := NewSystem(StandardAir(), "unit", runs, ends[:mostRuns])
	assert.NoError(t, err)
}

// TestPartsAreChecked holds that every bad part is told with its run or end.
func TestPartsAreChecked(t *testing.T) {
	runs, ends := house(t)
	runs[0].Sections[0].Length = -1
	runs[1].Sections[0].Shape = Shape{}
	runs[2].Losses = []StatedLoss{{"filter", 10, 0, 0}}
	runs[3].Sections[0].Fittings = []Fitting{{Name: "tee", Count: 0}}
	ends[0].Losses = []StatedLoss{{"hood", 10, 0.1, 3}}
	_, err := NewSystem(StandardAir(), "unit", runs, ends)
	require.Error(t, err)
	for _, want := range []string{
		`run "fresh", section 1: length "-1000 mm" is out of range`,
		`run "trunk", section 1: duct size is not given`,
		`run "first", loss "filter": flow of a stated loss "0 L/s" is out of range`,
		`run "second", section 1: fitting "tee": count "0" is out of range, expected 1 to 1000`,
		`end "intake", loss "hood": exponent of a stated loss "3" is out of range, expected 1 to 2`,
	} {
		assert.ErrorContains(t, err, want)
	}
	_, err = NewSystem(Air{}, "unit", runs, ends)
	assert.ErrorContains(t, err, "air density")
}

// TestASystemKeepsItsRuns holds that a change of the caller's slice changes nothing.
func TestASystemKeepsItsRuns(t *testing.T) {
	runs, ends := house(t)
	s := newSystem(t, runs, ends)
	before, err := s.Design(houseFlows)
	require.NoError(t, err)
	clear(runs)
	clear(ends)
	after, err := s.Design(houseFlows)
	require.NoError(t, err)
	assert.Equal(t, before, after)
}
