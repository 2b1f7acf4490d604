package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

type housePressure struct {
	Pressure []struct {
		Flow50, Net q.Flow
		Pressure    float64
	}
	Tightness []struct {
		Net, Flow50 q.Flow
		Limit       q.Pressure
	}
	Factors struct {
		Limit  []q.Pressure
		Factor []float64
	}
	Coefficient struct{ Power float64 }
	Area        areas
	AreaMetric  areas `toml:"area_metric"`
}

type areas struct {
	Flow50                q.Flow
	Effective, Equivalent float64
}

func readHousePressure(t *testing.T) (f housePressure) {
	t.Helper()
	published.Read(t, "house-pressure", &f)
	require.Len(t, f.Pressure, 7)
	require.Len(t, f.Tightness, 4)
	return f
}

func TestHousePressures(t *testing.T) {
	for _, c := range readHousePressure(t).Pressure {
		l := leakage(t, c.Flow50, DefaultExponent)
		assert.InEpsilon(t, c.Pressure, pressure(t, l, c.Net), 0.003, "%v of %v", c.Net, c.Flow50)
		assert.InEpsilon(t, -c.Pressure, pressure(t, l, -c.Net), 0.003, "%v of %v", c.Net, c.Flow50)
	}
}

func TestLeastLeakageForALimit(t *testing.T) {
	f := readHousePressure(t)
	for _, c := range f.Tightness {
		got, err := LeastFlow50(c.Net, c.Limit, DefaultExponent)
		require.NoError(t, err)
		assert.InEpsilon(t, float64(c.Flow50), float64(got), 3e-4)
		assert.InDelta(t, -float64(c.Limit), pressure(t, leakage(t, got, DefaultExponent), -c.Net), 1e-9, "the house is at its limit")
	}
	for i, limit := range f.Factors.Limit {
		got, err := LeastFlow50(1, limit, DefaultExponent)
		require.NoError(t, err)
		assert.InDelta(t, f.Factors.Factor[i], float64(got), 5.1e-4)
	}
}

func TestLeakageAreas(t *testing.T) {
	f := readHousePressure(t)
	l := leakage(t, f.Area.Flow50, DefaultExponent)
	assert.InDelta(t, f.Area.Effective, float64(l.EffectiveArea()/squareInch), 0.02)
	assert.InDelta(t, f.Area.Equivalent, float64(l.EquivalentArea()/squareInch), 0.15)
	metric := leakage(t, f.AreaMetric.Flow50, DefaultExponent)
	assert.InDelta(t, f.AreaMetric.Effective, float64(metric.EffectiveArea()/squareCentimetre), 5e-4)
}

func TestCoefficient(t *testing.T) {
	f := readHousePressure(t)
	l := leakage(t, 1, DefaultExponent)
	assert.InDelta(t, f.Coefficient.Power, 1/l.Coefficient(), 0.005)
	flow, err := l.Flow(1)
	require.NoError(t, err)
	assert.InDelta(t, l.Coefficient(), float64(flow), 1e-12, "the flow at 1 Pa")
}

func TestFlowAndPressureInvertEachOther(t *testing.T) {
	for _, n := range []float64{0.5, 0.58, 0.65, 0.72, 1} {
		l := leakage(t, 0.6, n)
		for _, p := range []q.Pressure{-400, -50, -5, -1e-3, 0, 1e-6, 2, 50, 75, 5000} {
			flow, err := l.Flow(p)
			require.NoError(t, err)
			assert.InDelta(t, float64(p), pressure(t, l, flow), 1e-9*math.Abs(float64(p))+1e-15)
		}
		at50, err := l.Flow(50)
		require.NoError(t, err)
		assert.Equal(t, l.Flow50(), at50)
	}
}

func TestMoreImbalanceNeverLessPressureAndTighterNeverLess(t *testing.T) {
	for _, n := range []float64{0.5, 0.65, 1} {
		last := math.Inf(-1)
		for net := q.Flow(-0.5); net <= 0.5; net += 0.01 {
			p := pressure(t, leakage(t, 0.3, n), net)
			assert.Greater(t, p, last)
			last = p
		}
		last = math.Inf(1)
		for flow50 := q.Flow(0.05); flow50 < 2; flow50 += 0.05 {
			p := pressure(t, leakage(t, flow50, n), 0.1)
			assert.Less(t, p, last)
			last = p
		}
	}
}

func TestLargestNetExhaustReachesTheLimit(t *testing.T) {
	l := leakage(t, 0.5, 0.6)
	flow, err := l.LargestNetExhaust(5)
	require.NoError(t, err)
	assert.InDelta(t, -5, pressure(t, l, -flow), 1e-12)
}

func TestAirChanges(t *testing.T) {
	// 3 air changes of 17200 ft3: 860 cfm, by the definition Q50 = ACH50 V/60.
	volume, changes := q.Volume(17200*foot*foot*foot), q.AirChange(3.0/3600)
	l, err := FromAirChanges50(changes, volume, 0.62)
	require.NoError(t, err)
	assert.InDelta(t, 860, float64(l.Flow50())/cfm, 1e-9)
	assert.Equal(t, 0.62, l.Exponent())
	back, err := l.AirChanges50(volume)
	require.NoError(t, err)
	assert.InEpsilon(t, float64(changes), float64(back), 1e-12)
}

func TestLeakageRefusesWhatLiesOutside(t *testing.T) {
	good := leakage(t, 0.5, 0.65)
	nan := math.NaN()
	_, err := FromFlow50(0, 0.65)
	assert.ErrorContains(t, err, "leakage flow at 50 Pa")
	for _, n := range []float64{0.49, 1.01, nan} {
		_, err = FromFlow50(0.5, n)
		assert.ErrorContains(t, err, "expected 0.5 to 1")
	}
	_, err = FromAirChanges50(q.AirChange(200.0/3600), 500, 0.65)
	assert.EqualError(t, err, `air change rate at 50 Pa "200 ACH" is out of range, expected 0 ACH to 100 ACH`)
	_, err = FromAirChanges50(3.0/3600, 0, 0.65)
	assert.ErrorContains(t, err, "volume")
	_, err = FromAirChanges50(0, 500, 0.65)
	assert.ErrorContains(t, err, "leakage flow at 50 Pa")
	_, err = good.AirChanges50(0)
	assert.ErrorContains(t, err, "volume")
	_, err = good.Flow(q.Pressure(nan))
	assert.ErrorContains(t, err, "pressure")
	_, err = good.Pressure(q.Flow(math.Inf(-1)))
	assert.ErrorContains(t, err, "unbalanced flow")
	_, err = good.LargestNetExhaust(-5)
	assert.ErrorContains(t, err, "depressurization limit")
	_, err = LeastFlow50(0.1, 0, 0.65)
	assert.ErrorContains(t, err, "depressurization limit")
}

func TestZeroLeakageIsNotAnAirtightHouse(t *testing.T) {
	var none Leakage
	_, err := none.Pressure(0.1)
	assert.ErrorIs(t, err, errNoLeakage)
	_, err = none.Flow(5)
	assert.ErrorIs(t, err, errNoLeakage)
	_, err = none.LargestNetExhaust(5)
	assert.ErrorIs(t, err, errNoLeakage)
	_, err = none.Infiltration(0.6, 5, q.SI)
	assert.ErrorIs(t, err, errNoLeakage)
	assert.Zero(t, none.EffectiveArea())
	assert.Zero(t, none.Coefficient())
}
