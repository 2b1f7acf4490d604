package drawing

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design/designtest"
	"github.com/ventlint/ventlint/checker/site"
	"github.com/ventlint/ventlint/rules"
)

// atCorner has its intake and its exhaust around the corner of 8 m, 0 m, both at
// one height: sides of 1.9 m and 2.4 m, so that the straight line has 3.061 m.
var atCorner = project + designtest.FourWalls("8 m", "6 m", "5 m") + `[[opening]]
id = "fresh"
kind = "intake"
wall = "south"
from_left = "6 m"
above_grade = "2 m"
diameter = "200 mm"
[[opening]]
id = "stale"
kind = "exhaust"
air_from = "living-space"
wall = "east"
from_left = "2.5 m"
above_grade = "2 m"
diameter = "200 mm"
`

// strung reviews a design by a pack of one rule and gives its plan.
func strung(t *testing.T, source, rule string) Drawing {
	t.Helper()
	pack := `
[pack]
id = "example"
title = "Example (invented)"
edition = "1"
units = "SI"
summary = "One distance"
[limits.apart]
value = "5 m"
title = "distance"
basis = [{ document = "Example", edition = "1", section = "1", read = "practice" }]
[[rule]]
id = "apart"
title = "Far apart"
topic = "openings"
level = "error"
due = "permit"
each = { intake = "intakes", exhaust = "exhausts" }
require = '` + rule + `'
says = "too near"
remedy = "move it"
basis = [{ document = "Example", edition = "1", section = "1", read = "practice" }]
`
	d := load(t, source)
	r := checker.Review(d, checker.Request{File: "house.vent.toml", Packs: one(t, pack), Date: "2026-03-14"})
	return Plan(d, site.New(d), Mark(r, []Finding{{1, &r.Results[0]}}), "p")
}

func one(t *testing.T, source string) []*rules.Effective {
	t.Helper()
	library := rules.NewLibrary(func(string) ([]byte, error) { return []byte(source), nil })
	pack, err := library.Pack("example.rules.toml")
	require.NoError(t, err)
	return []*rules.Effective{pack}
}

// lengthsOf gives the lengths of the lines of one class, in metres.
func lengthsOf(t *testing.T, made Drawing, class string) []float64 {
	t.Helper()
	root := parse(t, made.SVG)
	var all []float64
	for _, g := range root.all(func(e element) bool { return e.get("class") == class }) {
		require.Equal(t, "1", g.get("data-finding"))
		way, sum := points(t, g.child(t, "path").get("d")), 0.0
		for i := range way[1:] {
			sum += way[i].to(way[i+1]).length()
		}
		all = append(all, sum/ruler(t, root))
	}
	return all
}

const legendOfStrings = "the way along the outside of the house"

func TestAStringIsDrawnBesideTheStraightLine(t *testing.T) {
	for rule, asked := range map[string]string{
		"distance(intake, exhaust) >= limit.apart":                                         "",
		"distance(intake, exhaust) >= limit.apart or taut(intake, exhaust) >= limit.apart": ", asked 5000 mm",
	} {
		made := strung(t, atCorner, rule)
		straight := lengthsOf(t, made, "dimension")
		require.Len(t, straight, 1, rule)
		require.InDelta(t, math.Hypot(1.9, 2.4), straight[0], 0.01)
		along := lengthsOf(t, made, "string")
		require.Len(t, along, 1, rule)
		require.InDelta(t, 1.9+2.4, along[0], 0.01)
		require.Contains(t, made.SVG, "[1] 3061 mm, asked 5000 mm")
		require.Contains(t, made.SVG, "[1] along the outside 4300 mm"+asked+"<")
		require.Contains(t, made.SVG, legendOfStrings)
		require.Contains(t, made.Text, "Finding 1: along the outside 4300 mm"+asked+".")
	}
}

// A string bends at the corner of the house.
func TestAStringBendsAtTheCorner(t *testing.T) {
	root := parse(t, strung(t, atCorner, "taut(intake, exhaust) >= limit.apart").SVG)
	way := points(t, root.group(t, "class", "string").child(t, "path").get("d"))
	require.Len(t, way, 3)
	corner := points(t, root.group(t, "class", "footprint").child(t, "path").get("d"))[1]
	require.InDelta(t, 0, way[1].to(corner).length(), pixel)
	require.Empty(t, root.all(func(e element) bool { return e.get("class") == "dimension" }))
}

// Across a low and shallow house the shortest way leads over it: up 0.5 m to the top,
// 1.5 m across and down again.
func TestAStringOverTheHouseSaysSo(t *testing.T) {
	low := strings.NewReplacer(`height = "5 m"`, `height = "2.6 m"`, `"6 m"]`, `"1.5 m"]`,
		"wall = \"east\"\nfrom_left = \"2.5 m\"", "wall = \"north\"\nfrom_left = \"2 m\"").Replace(atCorner)
	made := strung(t, low, "distance(intake, exhaust) >= limit.apart")
	require.Contains(t, made.SVG, "[1] along the outside, over the house, 2500 mm<")
}

func TestNoStringWhereNothingIsInTheWay(t *testing.T) {
	beside := strings.Replace(atCorner, "wall = \"east\"\nfrom_left = \"2.5 m\"", "wall = \"south\"\nfrom_left = \"4 m\"", 1)
	for _, rule := range []string{
		"distance(intake, exhaust) >= limit.apart",
		"taut(intake, exhaust) >= limit.apart",
		"distance(intake, exhaust) >= limit.apart or taut(intake, exhaust) >= limit.apart",
	} {
		made := strung(t, beside, rule)
		straight := lengthsOf(t, made, "dimension")
		require.Len(t, straight, 1, rule)
		require.InDelta(t, 1.8, straight[0], 0.01)
		require.Empty(t, lengthsOf(t, made, "string"))
		require.NotContains(t, made.SVG, legendOfStrings)
	}
	stated := "[[stated_distance]]\nbetween = [\"fresh\", \"stale\"]\ndistance = \"3 m\"\ndrawing = \"M-1\"\n"
	require.Empty(t, lengthsOf(t, strung(t, atCorner+stated, "distance(intake, exhaust) >= limit.apart"), "string"))
}

// A wall's tops are asked for before a line is said to run through the house.
func TestNoStringWhereTopsAreNotKnown(t *testing.T) {
	unknown := strings.Replace(atCorner, `height = "5 m"`, "", 1)
	made := strung(t, unknown, "distance(intake, exhaust) >= limit.apart")
	require.Len(t, lengthsOf(t, made, "dimension"), 1)
	require.Empty(t, lengthsOf(t, made, "string"))
}

// Two things on one wall are as far apart along it as straight: one line shows both.
func TestElevationsShowOneLineForBoth(t *testing.T) {
	beside := strings.Replace(atCorner, "wall = \"east\"\nfrom_left = \"2.5 m\"", "wall = \"south\"\nfrom_left = \"4 m\"", 1)
	d := load(t, beside)
	fresh, stale := d.Openings[0], d.Openings[1]
	straight := Dimension{Straight, fresh, stale, 1, "1800 mm", "5 m"}
	along := Dimension{Around, fresh, stale, 1, "1800 mm", "5 m"}
	for _, marked := range [][]Dimension{{straight, along}, {along, straight}, {along}} {
		made := Elevation(d, site.New(d), d.Walls[0], Marks{Dimensions: marked}, "e")
		require.Len(t, lengthsOf(t, made, "dimension"), 1)
		require.Equal(t, []int{1}, made.Findings)
	}
}
