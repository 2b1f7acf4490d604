package drawing

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/site"
)

func everyDesign(t *testing.T) []string {
	t.Helper()
	var all []string
	for _, folder := range []string{"ok", "faults", "incomplete", "concept"} {
		names, err := filepath.Glob("../../testdata/designs/" + folder + "/*.vent.toml")
		require.NoError(t, err)
		for _, n := range names {
			all = append(all, folder+"/"+filepath.Base(n))
		}
	}
	require.NotEmpty(t, all)
	return all
}

var reference = regexp.MustCompile(`url\(#([^)]*)\)`)

// A page holds all drawings of a design: their ids must differ, and every hatch
// that one uses must be there.
func TestEveryShippedDesignIsDrawn(t *testing.T) {
	for _, name := range everyDesign(t) {
		d := shipped(t, name)
		r, findings := reviewed(t, d)
		ids := map[string]bool{}
		for _, made := range Of(r, findings, "r1-") {
			if made.SVG == "" {
				require.NotEmpty(t, made.Notes, "why %s is not drawn", made.Title)
				continue
			}
			root := parse(t, made.SVG)
			require.Equal(t, "img", root.get("role"))
			require.NotEmpty(t, root.child(t, "title").Text)
			require.NotEmpty(t, root.child(t, "desc").Text)
			for _, e := range root.all(func(e element) bool { return e.get("id") != "" }) {
				require.False(t, ids[e.get("id")], e.get("id"))
				ids[e.get("id")] = true
			}
			for _, used := range reference.FindAllStringSubmatch(made.SVG, -1) {
				require.True(t, ids[used[1]], used[1])
			}
			require.NotContains(t, made.SVG, "NaN")
			require.NotContains(t, made.SVG, "Inf")
		}
	}
}

func TestSameReportGivesSameDrawings(t *testing.T) {
	r, findings := reviewed(t, shipped(t, faulty))
	first := Of(r, findings, "")
	for range 5 {
		require.Equal(t, first, Of(r, findings, ""))
	}
}

// Every finding about something with a place is shown somewhere.
func TestFindingsAreShown(t *testing.T) {
	d := shipped(t, faulty)
	r, findings := reviewed(t, d)
	shown := map[int]bool{}
	for _, made := range Of(r, findings, "") {
		for _, n := range made.Findings {
			shown[n] = true
		}
	}
	require.NotEmpty(t, findings)
	for _, f := range findings {
		require.Equal(t, len(subjectsOf(d, f.Result)) > 0, shown[f.Number], f.Result.Message)
	}
}

func TestOnlyWallsThatBearSomethingAreDrawn(t *testing.T) {
	d := load(t, house+`
[[opening]]
id = "fresh"
kind = "intake"
wall = "south"
from_left = "2 m"
above_grade = "1 m"
diameter = "200 mm"
`)
	require.True(t, Bears(d, d.Walls[0]))
	require.False(t, Bears(d, d.Walls[1]))
	var keys []string
	for _, made := range Of(&checker.Report{Design: d}, nil, "x-") {
		keys = append(keys, made.Key)
	}
	require.Equal(t, []string{"x-plan", "x-elevation-1"}, keys)
}

const project = `
format = 1
[project]
name = "Invented house"
stage = "permit"
units = "SI"
[dwelling]
`

const house = project + `
snow_depth = "300 mm"
flood_level = "-9 m"
[[wall]]
id = "south"
from = ["0 m", "0 m"]
to = ["8 m", "0 m"]
grade = "0 m"
height = "5 m"
[[wall]]
id = "east"
from = ["8 m", "0 m"]
to = ["4 m", "6 m"]
[[wall]]
id = "west"
from = ["4 m", "6 m"]
to = ["0 m", "0 m"]
`

// What is not given is not invented: it is left out, and told.
func TestWhatCannotBeDrawnIsTold(t *testing.T) {
	d := load(t, project+`
flood_level = "1 m"
[[wall]]
id = "bare"
[[opening]]
id = "fresh"
kind = "intake"
wall = "bare"
from_left = "2 m"
above_grade = "1 m"
diameter = "200 mm"
[[opening]]
id = "stale"
kind = "exhaust"
wall = "bare"
above_grade = "1 m"
diameter = "200 mm"
[[source]]
id = "bins"
kind = "trash"
`)
	made := Elevation(d, site.New(d), wall(t, d, "bare"), Marks{}, "e")
	require.Equal(t, []string{
		`exhaust "stale" is not drawn: it gives no from_left`,
		"the ends of the wall are not given: its sides are not drawn",
		"the height of the wall is not given: its top is drawn dotted, above all that it bears",
		"the flood level is not drawn: the wall gives no grade",
	}, made.Notes)
	root := parse(t, made.SVG)
	require.Len(t, root.group(t, "class", "wall").Children, 3) // title, face, dotted top
	require.Empty(t, root.all(func(e element) bool { return e.get("data-id") == "stale" }))

	plan := Plan(d, site.New(d), Marks{}, "p")
	require.Empty(t, plan.SVG)
}

func TestAFarFloodLevelIsTold(t *testing.T) {
	d := load(t, house)
	require.Equal(t, []string{"the flood level lies 9000 mm below the ground, outside the drawing"},
		Elevation(d, site.New(d), wall(t, d, "south"), Marks{}, "e").Notes)
}

// A dimension of a drawing stands in for geometry: the figure is the stated one,
// and says so.
func TestStatedDistancesSaySo(t *testing.T) {
	source := house + `
[[opening]]
id = "fresh"
kind = "intake"
wall = "south"
from_left = "2 m"
above_grade = "1 m"
diameter = "200 mm"
[[opening]]
id = "stale"
kind = "exhaust"
serves = "hrv"
air_from = "living-space"
wall = "south"
from_left = "4 m"
above_grade = "1 m"
diameter = "200 mm"
[[ventilator]]
id = "hrv"
kind = "hrv"
[[stated_distance]]
between = ["fresh", "stale"]
distance = "2 m"
drawing = "M-1"
`
	d := load(t, source)
	r, findings := reviewed(t, d)
	made := Elevation(d, site.New(d), wall(t, d, "south"), Mark(r, findings), "e")
	require.Contains(t, made.Text, "found 2000 mm as stated, asked at least 3048 mm")
}

func TestTextsOfADesignAreEscaped(t *testing.T) {
	d := load(t, house)
	odd := `a<script>&"'` + "\x07"
	d.Openings = append(d.Openings, &design.Opening{Thing: design.Thing{ID: odd}, Kind: "intake",
		Placement: design.Placement{Wall: &design.Link[design.Wall]{ID: "south", To: d.Walls[0]},
			FromLeft: length(2), AboveGrade: length(1), Diameter: length(0.2)}})
	d.Walls[0].ID = odd
	for _, made := range Of(&checker.Report{Design: d}, nil, "") {
		require.NotContains(t, made.SVG, "<script")
		require.Contains(t, parse(t, made.SVG).group(t, "data-id", `a<script>&"'`+"\uFFFD").child(t, "title").Text, "<script>")
	}
}

// Lines and streets may be kilometres long; the house must stay readable.
func TestFarLinesDoNotShrinkTheHouse(t *testing.T) {
	d := load(t, house+`
[[line]]
id = "far"
kind = "lot-line"
from = ["-9000 m", "-2 m"]
to = ["9000 m", "-2 m"]
[[source]]
id = "road"
kind = "street"
along = [["-9000 m", "9 m"], ["9000 m", "9 m"]]
[[source]]
id = "mast"
kind = "flue"
at = ["900 m", "0 m"]
`)
	made := Plan(d, site.New(d), Marks{}, "p")
	require.Equal(t, []string{`source "mast" (flue) lies outside the drawing`}, made.Notes)
	require.Greater(t, ruler(t, parse(t, made.SVG)), 15.0)
}

func TestNothingIsToldByColourAlone(t *testing.T) {
	r, findings := reviewed(t, shipped(t, faulty))
	colours := regexp.MustCompile(`(?:stroke|fill)="#[0-9a-f]{6}"`)
	styles := map[string]string{}
	for _, style := range []string{wallEdge, unknown, ground, snowLine, floodLine, lotLine, publicWay, trackLine, asked, askedMore, offending, stringLine} {
		bare := strings.TrimSpace(colours.ReplaceAllString(style, ""))
		require.Empty(t, styles[bare], "%s looks like another line without colour", style)
		styles[bare] = style
	}
	require.NotEmpty(t, Of(r, findings, ""))
}
