package airflow

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

type operating struct {
	Density, Viscosity                float64
	Diameter, Length, Roughness       q.Length
	Hood, Elbow, Elbows, Damper, Exit float64
	Rest                              Point
	Curve                             []Point
	Flow                              q.Flow
	FlowShare                         float64 `toml:"flow_share"`
	Pressure                          q.Pressure
	PressureShare                     float64 `toml:"pressure_share"`
}

// TestTextbookFan is a complete example: hood, duct, elbows, damper and fan.
func TestTextbookFan(t *testing.T) {
	var f struct{ System operating }
	published.Read(t, "operating-point", &f)
	o := f.System
	duct := Run{ID: "duct", From: "hood", To: "unit", Sections: []Section{{Shape: round(t, o.Diameter), Material: rough(o.Roughness), Length: o.Length,
		Fittings: []Fitting{{Name: "hood", Count: 1, Coefficient: o.Hood}, {Name: "elbow", Count: int(o.Elbows), Coefficient: o.Elbow}, {Name: "damper", Count: 1, Coefficient: o.Damper}, {Name: "exit", Count: 1, Coefficient: o.Exit}}}}}
	s, err := NewSystem(airOf(o.Density, o.Viscosity), "unit", []Run{duct}, []End{{ID: "hood"}})
	require.NoError(t, err)

	_, err = NewCurve(append([]Point{o.Rest}, o.Curve...)...)
	assert.ErrorContains(t, err, "leave out the points before the highest pressure")
	fan, err := NewCurve(o.Curve...)
	require.NoError(t, err)
	at, err := s.MeetOpen(fan)
	require.NoError(t, err)
	require.Equal(t, OnCurve, at.Meeting)
	assert.InEpsilon(t, float64(o.Flow), float64(at.Flow), o.FlowShare)
	assert.InEpsilon(t, float64(o.Pressure), float64(at.Pressure), o.PressureShare)
	assert.InEpsilon(t, float64(at.Pressure), float64(at.Losses().Pressure), 1e-6)
	damped, err := s.MeetDamped(fan, Flows{"hood": 0.1})
	require.NoError(t, err)
	assert.InEpsilon(t, float64(at.Flow), float64(damped.Flow), 1e-9, "one path has nothing to balance")
}

func TestOperatingPointOfTheHouse(t *testing.T) {
	s := newSystem(t, first(house(t)), second(house(t)))
	fan := curveOf(t, 0, 200, 0.03, 120, 0.06, 60, 0.08, 0)
	damped, err := s.MeetDamped(fan, houseFlows)
	require.NoError(t, err)
	open, err := s.MeetOpen(fan)
	require.NoError(t, err)
	assert.Greater(t, open.Flow, damped.Flow, "dampers take pressure")
	for _, o := range []*Operation{damped, open} {
		p, err := fan.PressureAt(o.Flow)
		require.NoError(t, err)
		assert.Equal(t, OnCurve, o.Meeting)
		assert.InEpsilon(t, float64(p), float64(o.Losses().Pressure), 1e-6)
		assert.InEpsilon(t, float64(o.Flow), float64(o.Losses().Flow), 1e-12)
		assert.Equal(t, [2]q.Flow{o.Flow, o.Flow}, [2]q.Flow{o.Least, o.Most})
		assert.Less(t, o.Steps, 60)
		assert.Greater(t, o.Steps, 2, "both ends of the curve, and more")
		least, most := o.Shortfall(o.Flow + 0.01)
		assert.InDelta(t, 0.01, float64(least), 1e-12)
		assert.Equal(t, least, most)
		least, most = o.Shortfall(o.Flow - 0.01)
		assert.Zero(t, least+most)
	}
	assert.InEpsilon(t, 0.012/0.042, float64(endOf(t, damped.Losses(), "bed-1").Flow/damped.Flow), 1e-9)
	even(t, open.Losses(), float64(open.Flow))
	_, err = s.MeetDamped(fan, Flows{})
	assert.ErrorContains(t, err, "flow is not known")
}

func TestOutsideTheCurve(t *testing.T) {
	s := newSystem(t, first(house(t)), second(house(t)))
	weak := curveOf(t, 0.04, 5, 0.06, 0)
	o, err := s.MeetOpen(weak)
	require.NoError(t, err)
	assert.Equal(t, AboveCurve, o.Meeting)
	assert.Zero(t, o.Flow)
	assert.Equal(t, [2]q.Flow{0, 0.04}, [2]q.Flow{o.Least, o.Most})
	assert.Greater(t, o.Losses().Pressure, q.Pressure(5))
	least, most := o.Shortfall(0.05)
	assert.InDelta(t, 0.01, float64(least), 1e-12)
	assert.InDelta(t, 0.05, float64(most), 1e-12)

	strong := curveOf(t, 0, 900, 0.02, 800)
	o, err = s.MeetDamped(strong, houseFlows)
	require.NoError(t, err)
	assert.Equal(t, BeyondCurve, o.Meeting)
	assert.Zero(t, o.Pressure)
	assert.Equal(t, q.Flow(0.02), o.Least)
	assert.True(t, math.IsInf(float64(o.Most), 1))
	assert.Less(t, o.Losses().Pressure, q.Pressure(800))
	least, most = o.Shortfall(0.03)
	assert.Zero(t, least)
	assert.InDelta(t, 0.01, float64(most), 1e-12)
}

func TestUnitThatHoldsItsFlow(t *testing.T) {
	s := newSystem(t, first(house(t)), second(house(t)))
	needs, err := s.Design(houseFlows)
	require.NoError(t, err)
	for limit, want := range map[q.Pressure]Meeting{needs.Pressure * 2: OnCurve, needs.Pressure: OnCurve, needs.Pressure * 0.99: AboveCurve} {
		fan, err := HoldsFlow(needs.Flow, limit)
		require.NoError(t, err)
		o, err := s.MeetDamped(fan, houseFlows)
		require.NoError(t, err)
		assert.Equal(t, want, o.Meeting, limit)
		assert.InDelta(t, float64(needs.Flow), float64(o.Most), 1e-12)
		if want == OnCurve {
			assert.InEpsilon(t, float64(needs.Pressure), float64(o.Pressure), 1e-9)
			least, _ := o.Shortfall(needs.Flow)
			assert.InDelta(t, 0, float64(least), 1e-12)
		}
	}
	_, err = HoldsFlow(0.1, 0)
	assert.Error(t, err)
}

// TestCurveThroughACorner meets exactly at a point, and on a level stretch.
func TestCurveThroughACorner(t *testing.T) {
	s := newSystem(t, []Run{{ID: "a", From: "unit", To: "x", Losses: []StatedLoss{{"all", 100, 0.05, 2}}}}, []End{{ID: "x"}})
	for _, c := range []struct {
		fan  Curve
		flow float64
	}{
		{curveOf(t, 0, 150, 0.05, 100, 0.08, 0), 0.05},
		{curveOf(t, 0.05, 100, 0.08, 0), 0.05},
		{curveOf(t, 0, 150, 0.05, 100), 0.05},
		{curveOf(t, 0, 100, 0.09, 100, 0.1, 0), 0.05},
		{curveOf(t, 0, 25, 0.09, 25), 0.025},
	} {
		o, err := s.MeetOpen(c.fan)
		require.NoError(t, err)
		assert.Equal(t, OnCurve, o.Meeting)
		assert.InEpsilon(t, c.flow, float64(o.Flow), 1e-9, c.fan.Points())
	}
}

// TestRandomFansMeetRandomTrees holds that each pair has one of the three outcomes,
// and that the operating point lies on both curves.
func TestRandomFansMeetRandomTrees(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	found, pairs := map[Meeting]int{}, 300
	if testing.Short() {
		pairs = 60
	}
	for range pairs {
		runs, ends := tree(t, r)
		s, err := NewSystem(StandardAir(), "unit", runs, ends)
		require.NoError(t, err)
		fan := randomCurve(t, r)
		o, err := s.MeetOpen(fan)
		if err != nil {
			require.ErrorContains(t, err, "velocity")
			continue
		}
		found[o.Meeting]++
		if o.Meeting == OnCurve {
			even(t, o.Losses(), float64(o.Flow))
			onCurve(t, fan, Point{o.Flow, o.Losses().Pressure})
		}
	}
	assert.Len(t, found, 3, "%v", found)
}

func randomCurve(t testing.TB, r *rand.Rand) Curve {
	var points []Point
	flow, pressure := q.Flow(0), q.Pressure(1000*r.Float64())
	for range 2 + r.IntN(6) {
		points = append(points, Point{flow, pressure})
		flow += q.Flow(0.05 * r.Float64())
		pressure *= q.Pressure(r.Float64())
	}
	c, err := NewCurve(points[r.IntN(len(points)-1):]...)
	require.NoError(t, err)
	return c
}

// onCurve holds that a point lies on a curve, which may stand or lie level there,
// within a hundred thousandth of its size.
func onCurve(t testing.TB, c Curve, p Point) {
	t.Helper()
	high, err := c.PressureAt(p.Flow)
	require.NoError(t, err)
	if math.Abs(float64(high-p.Pressure)) <= 1e-5*float64(c.points[0].Pressure) {
		return
	}
	least, err := c.FlowAt(p.Pressure)
	require.NoError(t, err)
	assert.InDelta(t, float64(least), float64(p.Flow), 1e-5*float64(c.points[len(c.points)-1].Flow))
}
