package drawing

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

// Coordinates are printed to a hundredth of a pixel; the scale bar too.
const pixel = 0.03

// The places in the picture, measured from the wall's left foot with the scale
// bar, are those of the design file.
func TestElevationsAreToScale(t *testing.T) {
	for _, id := range []string{"north", "east", "west", "south", "court-south", "court-west"} {
		d, _, root := drawn(t, faulty, id)
		scale := ruler(t, root)
		foot := points(t, root.group(t, "class", "wall").child(t, "path").get("d"))[0]
		w := wall(t, d, id)
		for _, th := range things(d) {
			if th.wall() != w {
				continue
			}
			width, height, round, _ := th.size()
			x := foot.x + scale*(float64(*th.where.FromLeft)-width/2)
			y := foot.y - scale*(float64(*th.where.AboveGrade)+height/2)
			group := root.group(t, "data-id", th.id)
			if round {
				c := group.child(t, "circle")
				require.InDelta(t, scale*width/2, c.number(t, "r"), pixel, th.id)
				require.InDelta(t, x, c.number(t, "cx")-c.number(t, "r"), pixel*4, th.id)
				require.InDelta(t, y, c.number(t, "cy")-c.number(t, "r"), pixel*4, th.id)
				continue
			}
			r := group.child(t, "rect")
			require.InDelta(t, scale*width, r.number(t, "width"), pixel, th.id)
			require.InDelta(t, scale*height, r.number(t, "height"), pixel, th.id)
			require.InDelta(t, x, r.number(t, "x"), pixel*4, th.id)
			require.InDelta(t, y, r.number(t, "y"), pixel*4, th.id)
		}
	}
}

// Every dimension on the elevation of the wall of the intake is as long as the
// distance that the geometry computes for the same two things.
func TestDimensionsOfElevationsAreTheComputedDistances(t *testing.T) {
	d, s, root := drawn(t, faulty, "north")
	r, findings := reviewed(t, d)
	seen := 0
	for _, dim := range Mark(r, findings).Dimensions {
		from, to := placeOf(d, dim.From), placeOf(d, dim.To)
		if from.wall() == nil || from.wall() != to.wall() || from.wall().ID != "north" {
			continue
		}
		want, err := s.Distance(dim.From, dim.To)
		if dim.Way == Level {
			want, err = s.Horizontal(dim.From, dim.To)
		}
		require.NoError(t, err)
		require.InDelta(t, float64(want)*ruler(t, root), lineOf(t, root, dim.Number), pixel*4, dim.Number)
		seen++
	}
	require.Equal(t, 3, seen)
}

func placeOf(d *design.Design, p design.Placed) thing {
	for _, t := range things(d) {
		if t.self == p {
			return t
		}
	}
	return thing{where: &design.Placement{}}
}

// lineOf is the length of the line of a dimension, in pixels.
func lineOf(t *testing.T, root element, number int) float64 {
	t.Helper()
	path := root.group(t, "data-finding", strconv.Itoa(number)).child(t, "path")
	ends := points(t, path.get("d"))
	require.Len(t, ends, 2)
	return ends[0].to(ends[1]).length()
}

// On the plan every dimension is as long as the horizontal distance, since all
// that lie on it run level in this house or rise less than they show.
func TestDimensionsOfThePlanAreTheComputedDistances(t *testing.T) {
	d, s, root := drawn(t, faulty, "")
	r, findings := reviewed(t, d)
	scale, seen := ruler(t, root), 0
	for _, dim := range Mark(r, findings).Dimensions {
		if dim.Way == Upright {
			continue
		}
		m, err := s.Measure(dim.From, dim.To)
		if dim.Way == Level {
			m, err = s.MeasurePlan(dim.From, dim.To)
		}
		require.NoError(t, err)
		drop := m.From[2] - m.To[2]
		level := math.Sqrt(max(0, float64(m.Length*m.Length)-drop*drop))
		if dim.Way == Level {
			level = float64(m.Length)
		}
		require.InDelta(t, level*scale, lineOf(t, root, dim.Number), pixel*4, dim.Number)
		seen++
	}
	require.Equal(t, 7, seen)
}

// By hand: 36 ft by 20 ft and 20 ft by 14 ft make 1000 ft2; the lot is 74 ft wide.
func TestThePlanIsToScale(t *testing.T) {
	_, _, root := drawn(t, faulty, "")
	footPixels := ruler(t, root) * 0.3048
	house := points(t, root.group(t, "class", "footprint").child(t, "path").get("d"))
	sum := 0.0
	for i, a := range house {
		b := house[(i+1)%len(house)]
		sum += a.x*b.y - b.x*a.y
	}
	require.InDelta(t, 1000, math.Abs(sum)/2/footPixels/footPixels, 0.5)
	lot := points(t, root.group(t, "data-id", "lot-south").child(t, "path").get("d"))
	require.InDelta(t, 74, lot[0].to(lot[1]).length()/footPixels, 0.01)
}

// The outline of a clearance lies at its distance from the edge of the intake:
// 10 ft around a hood of 8 in is 20 ft 8 in wide, with corners of 10 ft.
func TestClearancesAreToScale(t *testing.T) {
	_, _, root := drawn(t, faulty, "north")
	inch := ruler(t, root) * 0.0254
	hood := root.group(t, "data-id", "fresh").child(t, "rect")
	found := false
	for _, c := range root.all(func(e element) bool { return e.get("data-around") == "fresh" }) {
		r := c.child(t, "rect")
		reach := r.number(t, "rx")
		require.InDelta(t, hood.number(t, "width")+2*reach, r.number(t, "width"), pixel)
		require.InDelta(t, hood.number(t, "x")-reach, r.number(t, "x"), pixel)
		require.InDelta(t, hood.number(t, "y")-reach, r.number(t, "y"), pixel)
		found = found || math.Abs(reach-120*inch) < pixel && math.Abs(r.number(t, "width")-248*inch) < 2*pixel
	}
	require.True(t, found, "no clearance of 10 ft")
}

func TestScalesAndBarsAreRound(t *testing.T) {
	for most, want := range map[float64]float64{37: 35, 99.9: 95, 100: 100, 0.74: 0.7, 1.49: 1} {
		require.InDelta(t, want, roundScale(most), 1e-9)
	}
	for most, want := range map[float64]float64{7: 5, 4.9: 2, 1.9: 1, 30: 20, 0.6: 0.5} {
		require.InDelta(t, want, roundStep(most), 1e-9)
	}
}
