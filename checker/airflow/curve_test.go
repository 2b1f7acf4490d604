package airflow

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/bounds"
	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// curveOf takes flows and pressures in turn.
func curveOf(t testing.TB, numbers ...float64) Curve {
	t.Helper()
	var points []Point
	for i := 0; i < len(numbers); i += 2 {
		points = append(points, Point{q.Flow(numbers[i]), q.Pressure(numbers[i+1])})
	}
	c, err := NewCurve(points...)
	require.NoError(t, err)
	return c
}

func TestCurveBetweenItsPoints(t *testing.T) {
	c := curveOf(t, 0, 200, 0.04, 150, 0.06, 150, 0.08, 50, 0.08, 0)
	for flow, want := range map[q.Flow]q.Pressure{0: 200, 0.02: 175, 0.04: 150, 0.05: 150, 0.07: 100, 0.08: 50} {
		p, err := c.PressureAt(flow)
		require.NoError(t, err)
		assert.InDelta(t, float64(want), float64(p), 1e-9, flow)
	}
	for pressure, want := range map[q.Pressure]q.Flow{200: 0, 175: 0.02, 150: 0.04, 100: 0.07, 50: 0.08, 20: 0.08, 0: 0.08} {
		flow, err := c.FlowAt(pressure)
		require.NoError(t, err)
		assert.InDelta(t, float64(want), float64(flow), 1e-12, pressure)
	}
	var out *bounds.Error
	_, err := c.PressureAt(0.081)
	assert.ErrorAs(t, err, &out)
	_, err = c.FlowAt(201)
	assert.ErrorAs(t, err, &out)
	_, err = c.FlowAt(q.Pressure(math.NaN()))
	assert.ErrorAs(t, err, &out)
	assert.Len(t, c.Points(), 5)
}

func TestCurvesThatNoFanHas(t *testing.T) {
	for name, points := range map[string][]Point{
		"rises":     {{0, 100}, {0.01, 110}},
		"goes back": {{0.02, 100}, {0.01, 90}},
		"repeats":   {{0, 100}, {0, 100}},
	} {
		var wrong *CurveError
		_, err := NewCurve(points...)
		require.ErrorAs(t, err, &wrong, name)
		assert.Equal(t, points[1], wrong.After)
	}
	_, err := NewCurve(Point{0, 100}, Point{0.01, 110})
	assert.EqualError(t, err, `fan curve goes from "100 Pa" at "0 L/s" to "110 Pa" at "10 L/s", expected rising flow at falling pressure; leave out the points before the highest pressure`)
	_, err = NewCurve(Point{0, 100})
	assert.EqualError(t, err, "fan curve has 1 points, expected 2 to 1000")
	_, err = NewCurve(falling(1001)...)
	assert.EqualError(t, err, "fan curve has 1001 points, expected 2 to 1000")
	_, err = NewCurve(falling(1000)...)
	assert.NoError(t, err)
	for _, p := range []Point{{-1, 10}, {0.1, -1}, {q.Flow(math.NaN()), 1}, {0.1, q.Pressure(math.Inf(1))}} {
		_, err = NewCurve(Point{0, 100}, p)
		assert.ErrorContains(t, err, "out of range")
	}
	var none Curve
	_, err = none.PressureAt(0)
	assert.ErrorContains(t, err, "fan curve is not given")
	_, err = none.FlowAt(0)
	assert.ErrorContains(t, err, "fan curve is not given")
	_, err = newSystem(t, first(house(t)), second(house(t))).MeetOpen(none)
	assert.ErrorContains(t, err, "fan curve is not given")
	_, err = newSystem(t, first(house(t)), second(house(t))).MeetDamped(none, houseFlows)
	assert.ErrorContains(t, err, "fan curve is not given")
}

// falling gives so many points of a curve.
func falling(n int) (points []Point) {
	for i := range n {
		points = append(points, Point{q.Flow(i) / 1e6, q.Pressure(n - i)})
	}
	return points
}

func TestFanLaws(t *testing.T) {
	var f struct {
		Laws struct {
			Speed, Power []float64
			Flow         []q.Flow
			Pressure     []q.Pressure
		}
		TotalPressure struct {
			OutletStatic q.Pressure `toml:"outlet_static"`
			InletStatic  float64    `toml:"inlet_static"`
			Rise         q.Pressure
		} `toml:"total_pressure"`
	}
	published.Read(t, "fan-laws", &f)
	law, err := Speed(f.Laws.Speed[1] / f.Laws.Speed[0])
	require.NoError(t, err)
	assert.InDelta(t, float64(f.Laws.Flow[1]), float64(law.Flow(f.Laws.Flow[0])), 1e-9)
	assert.InDelta(t, float64(f.Laws.Pressure[1]), float64(law.Pressure(f.Laws.Pressure[0])), 1e-9)
	assert.InDelta(t, f.Laws.Power[1], float64(law.Power(q.Power(f.Laws.Power[0]))), 0.005)

	rise := TotalPressure(f.TotalPressure.OutletStatic, 30, q.Pressure(f.TotalPressure.InletStatic*inwc), 30)
	assert.InDelta(t, float64(f.TotalPressure.Rise), float64(rise), 0.001*inwc)
	// static pressure of a fan is total less outlet velocity pressure: an open inlet
	assert.Equal(t, q.Pressure(130), TotalPressure(100, 30, 0, 0))
	assert.Equal(t, q.Pressure(100), TotalPressure(100, 30, -30, 60))
}

// TestDensityOfAFan: the same volume, pressure and power with density. Source: fan
// laws, http://nrmurphy.com/fans_laws.html, seen.
func TestDensityOfAFan(t *testing.T) {
	law, err := Density(1.2, 0.9)
	require.NoError(t, err)
	c, err := law.Curve(curveOf(t, 0, 200, 0.08, 40))
	require.NoError(t, err)
	assert.Equal(t, []Point{{0, 150}, {0.08, 30}}, c.Points())
	assert.InDelta(t, 75, float64(law.Power(100)), 1e-12)
	assert.Equal(t, q.Flow(0.05), law.Flow(0.05))
	for _, d := range []moistair.Density{0, -1, 3, moistair.Density(math.NaN())} {
		_, err = Density(1.2, d)
		assert.ErrorContains(t, err, "air density")
		_, err = Density(d, 1.2)
		assert.ErrorContains(t, err, "rated density")
	}
	_, err = Speed(0)
	assert.Error(t, err)
	_, err = law.Curve(Curve{})
	assert.Error(t, err)
}

// TestSpeedMovesTheOperatingPointAlongTheSystem: with fixed coefficients flow goes
// with speed, so a pressure ratio gives the root of it as flow ratio. Source:
// ASHRAE Fundamentals 2021, chapter 21, equation 42.
func TestSpeedMovesTheOperatingPointAlongTheSystem(t *testing.T) {
	s := newSystem(t, []Run{{ID: "a", From: "unit", To: "x", Losses: []StatedLoss{{"all", 100, 0.05, 2}}}}, []End{{ID: "x"}})
	fan := curveOf(t, 0, 200, 0.1, 0)
	at, err := s.MeetOpen(fan)
	require.NoError(t, err)
	law, err := Speed(0.8)
	require.NoError(t, err)
	slower, err := law.Curve(fan)
	require.NoError(t, err)
	then, err := s.MeetOpen(slower)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.8, float64(then.Flow/at.Flow), 1e-9)
	assert.InEpsilon(t, math.Sqrt(float64(then.Pressure/at.Pressure)), float64(then.Flow/at.Flow), 1e-9)
}
