package drawing

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/airflow"
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/facts"
)

const sound = "ok/alder-court.vent.toml"

func airways(t *testing.T, d *design.Design) []facts.Airway {
	t.Helper()
	all := facts.Of(d).Airways()
	require.Len(t, all, 2)
	return all
}

// Every duct, terminal and opening has its row; a way and what its damper adds make
// up the critical way.
func TestDuctTree(t *testing.T) {
	d := shipped(t, sound)
	for _, a := range airways(t, d) {
		tree := &ductTree{design: d, units: q.IP, airway: a}
		tree.side(a.Losses.Inlet, "inlet")
		tree.side(a.Losses.Outlet, "outlet")
		made := Ducts(d, a, "ducts")
		require.Len(t, made, 1)
		for _, duct := range d.Ducts {
			of := map[string]string{"outdoor-air": "supply", "supply-air": "supply", "extract-air": "extract", "exhaust-air": "extract"}[string(duct.Airstream)]
			require.Equal(t, of == a.Side, strings.Contains(made[0].SVG, ">"+duct.ID+"</text>"), duct.ID)
		}
		for _, side := range []airflow.SideLoss{a.Losses.Inlet, a.Losses.Outlet} {
			for _, e := range side.Ends {
				require.InDelta(t, float64(side.Pressure), float64(e.Sum+e.Damper), 1e-9, e.ID)
				require.Contains(t, made[0].SVG, ">"+tree.label(e.ID)+"</text>")
				require.Contains(t, made[0].SVG, ">"+q.Format(e.Sum, q.IP)+"</text>")
			}
			require.Contains(t, made[0].Text, "leads to "+tree.label(side.Critical)+" ")
		}
		require.Equal(t, 2, strings.Count(made[0].SVG, ">critical</text>"), "one on each side of the unit")
	}
}

// Each row hangs on the row of the duct that it is joined to.
func TestDuctTreeHangsTogether(t *testing.T) {
	tree := &ductTree{design: &design.Design{}, units: q.SI}
	run := func(id string) airflow.RunLoss { return airflow.RunLoss{ID: id, Loss: 1} }
	tree.side(airflow.SideLoss{Critical: "b", Runs: []airflow.RunLoss{run("trunk"), run("left"), run("right")},
		Ends: []airflow.EndLoss{{ID: "a", Path: []string{"trunk", "left"}, Sum: 2, Damper: 1}, {ID: "b", Path: []string{"trunk", "right"}, Sum: 3}}}, "side")
	var rows []string
	for _, r := range tree.rows {
		rows = append(rows, fmt.Sprintf("%d %s %d %t", r.depth, r.cells[0], r.parent, r.critical))
	}
	require.Equal(t, []string{"0 side -1 false", "1 trunk 0 true", "2 left 1 false", "3 a 2 false", "2 right 1 true", "3 b 4 true"}, rows)
}

// A tree that is too long for a page goes on, and no row is lost.
func TestLongDuctTree(t *testing.T) {
	var l airflow.SideLoss
	var path []string
	for n := range 100 {
		id := fmt.Sprintf("duct-%d", n)
		l.Runs = append(l.Runs, airflow.RunLoss{ID: id})
		path = append(path, id)
	}
	l.Ends, l.Critical = []airflow.EndLoss{{ID: "end", Path: path}}, "end"
	unit := &design.Ventilator{Kind: "hrv"}
	unit.ID = "fan"
	a := facts.Airway{Unit: unit, Side: "supply", Losses: &airflow.Losses{Outlet: l}}
	made := Ducts(&design.Design{Project: &design.Project{}}, a, "ducts")
	require.Len(t, made, 3)
	whole := made[0].SVG + made[1].SVG + made[2].SVG
	for _, id := range append(path, "end") {
		require.Equal(t, 1, strings.Count(whole, ">"+id+"</text>"), id)
	}
	require.Equal(t, `supply ducts of ventilator "fan" (hrv), sheet 3 of 3`, made[2].Title)
}

// What is missing is told in place of a drawing.
func TestDuctsOfUnknownLossAreNotDrawn(t *testing.T) {
	d := shipped(t, sound)
	d.Ducts[0].Material = nil
	a := airways(t, d)
	var told []string
	for i, made := range Airways(d, "") {
		if made.SVG == "" {
			told = append(told, made.Notes...)
		} else {
			require.NotContains(t, made.Key, "ducts-"+strconv.Itoa(unknownOf(a)+1), i)
		}
	}
	require.Len(t, told, 1)
	require.Contains(t, told[0], "material")
}

func unknownOf(all []facts.Airway) int {
	for i, a := range all {
		if a.Losses == nil {
			return i
		}
	}
	return -1
}

var (
	circle = regexp.MustCompile(`<circle cx="([\d.]+)" cy="([\d.]+)" r="4.5"`)
	path   = regexp.MustCompile(`<path d="(M[^"]+)" fill="none" ([^/]*)/>`)
)

// strokes finds the points of all lines of a style.
func strokes(svg, style string) []spot {
	var points []spot
	for _, m := range path.FindAllStringSubmatch(svg, -1) {
		if m[2] == style {
			for _, pair := range regexp.MustCompile(`([\d.]+) ([\d.]+)`).FindAllStringSubmatch(m[1], -1) {
				points = append(points, spotOfText(pair[1], pair[2]))
			}
		}
	}
	return points
}

func spotOfText(x, y string) spot {
	a, _ := strconv.ParseFloat(x, 64) //nolint:errcheck // the pattern lets numbers through only
	b, _ := strconv.ParseFloat(y, 64) //nolint:errcheck // likewise
	return spot{a, b}
}

func farFrom(p spot, line []spot) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		along := line[i-1].to(line[i])
		share := 0.0
		if along.length() > 0 {
			to := line[i-1].to(p)
			share = max(0, min(1, (to.x*along.x+to.y*along.y)/(along.length()*along.length())))
		}
		least = min(least, line[i-1].plus(share, along).to(p).length())
	}
	return least
}

// Where a fan works lies on its curve and on the loss of its ducts, as drawn.
func TestFanChart(t *testing.T) {
	d := shipped(t, sound)
	for _, a := range airways(t, d) {
		made := Fan(d, a, "fan")
		points := circle.FindAllStringSubmatch(made.SVG, -1)
		require.Len(t, points, len(a.Settings))
		require.Len(t, points, 4)
		for i, s := range a.Settings {
			p := spotOfText(points[i][1], points[i][2])
			require.Less(t, farFrom(p, strokes(made.SVG, settingLines[s.Name])), 0.1, s.Name)
			require.Less(t, farFrom(p, strokes(made.SVG, systemLine)), 0.5, s.Name)
			require.Contains(t, made.Text, "At the setting "+s.Name+" it moves "+q.Format(s.Met.Flow, q.IP))
		}
		require.NotContains(t, made.Text, "short by")
	}
}

// A fan that moves less than the design asks for is told to be short of it.
func TestFanChartOfAWeakFan(t *testing.T) {
	d := shipped(t, sound)
	a := airways(t, d)[0]
	a.Asked = a.Settings[0].Met.Flow + 0.01
	made := Fan(d, a, "fan")
	require.Contains(t, made.Text, "The fan stays short by 21.2 cfm")
	line := strokes(made.SVG, offending)
	require.Len(t, line, 2)
	require.Equal(t, line[0].y, line[1].y)
	require.Greater(t, line[1].x, line[0].x)
}

// A fan whose curve does not meet its ducts has no point, and the reason is told.
func TestFanChartWithoutMeeting(t *testing.T) {
	d := shipped(t, sound)
	a := airways(t, d)[0]
	met := *a.Settings[0].Met
	met.Meeting = airflow.BeyondCurve
	a.Settings = []facts.FanSetting{{Name: "normal", Curve: a.Settings[0].Curve, Met: &met}, {Name: "low", Curve: a.Settings[1].Curve}}
	made := Fan(d, a, "fan")
	require.Empty(t, circle.FindAllString(made.SVG, -1))
	require.Equal(t, []string{"a working point at normal, which lies beyond the fan curve", "where the fan meets its ducts at low, which is not known"}, made.Notes)

	a.Settings = nil
	require.Empty(t, Fan(d, a, "fan").SVG, "without a curve there is nothing to draw")
}

// Axes are read at round numbers, from zero, as far as they reach.
func TestTicks(t *testing.T) {
	require.Equal(t, []float64{0, 20, 40, 60, 80, 100}, axis{most: 0.104, unit: 0.001}.ticks())
	require.Equal(t, []float64{0, 0.1, 0.2}[1], axis{most: 0.6, unit: 1}.ticks()[1])
	require.Len(t, axis{most: 0.6, unit: 1}.ticks(), 7)
}

func TestStack(t *testing.T) {
	require.Empty(t, Stack(nil))
	require.Equal(t, "<svg/>", Stack([]Drawing{{SVG: "<svg/>"}}))
	two := Stack([]Drawing{{Title: "one", SVG: "<svg>1</svg>", height: 100}, {Title: "two", SVG: "<svg>2</svg>", height: 50}})
	require.Contains(t, two, `height="230"`)
	require.Less(t, strings.Index(two, ">One<"), strings.Index(two, ">Two<"))
	require.Contains(t, two, `translate(0 140)`)
}
