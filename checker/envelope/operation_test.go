package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// invented equipment of a tight house, in m3/s
var (
	hood  = Device{Name: "hood", Exhaust: 0.14, Makeup: 0.10}
	dryer = Device{Name: "dryer", Exhaust: 0.07}
	bath  = Device{Name: "bath fan", Exhaust: 0.03}
	fresh = Device{Name: "fresh air fan", Supply: 0.02}
	unit  = Device{Name: "ventilator", Exhaust: 0.05, Supply: 0.05, Continuous: true}
)

func TestHouseInItsStates(t *testing.T) {
	l := leakage(t, 0.4, 0.65)
	houses, err := l.Pressures(
		Operation{Name: "quiet", Exhaust: []q.Flow{0.05}, Supply: []q.Flow{0.05}},
		Operation{Name: "cooking", Exhaust: []q.Flow{0.05, 0.14}, Supply: []q.Flow{0.05}, Makeup: []q.Flow{0.10}},
		Operation{Name: "fresh", Exhaust: []q.Flow{0.05}, Supply: []q.Flow{0.05, 0.02}},
	)
	require.NoError(t, err)
	require.Len(t, houses, 3)
	assert.Zero(t, houses[0].Pressure)
	assert.InDelta(t, -0.04, float64(houses[1].Imbalance), 1e-15)
	assert.InDelta(t, -50*math.Pow(0.1, 1/0.65), float64(houses[1].Pressure), 1e-9)
	assert.InDelta(t, 0.15, float64(houses[1].Incoming), 1e-15)
	assert.InDelta(t, 0.19, float64(houses[1].Outgoing), 1e-15)
	assert.Positive(t, float64(houses[2].Pressure))
	assert.Zero(t, houses[2].Depressurization())
	lowest, err := Lowest(houses)
	require.NoError(t, err)
	assert.Equal(t, "cooking", lowest.Name)
	assert.Equal(t, -lowest.Pressure, lowest.Depressurization())
	flow, err := l.Flow(lowest.Pressure)
	require.NoError(t, err)
	assert.InDelta(t, float64(lowest.Imbalance), float64(flow), 1e-12, "leakage makes up the imbalance")
}

func TestWorstCaseRunsEveryExhaust(t *testing.T) {
	o, err := WorstCase(hood, dryer, bath, fresh, unit)
	require.NoError(t, err)
	assert.Equal(t, []string{"hood", "dryer", "bath fan", "ventilator"}, o.Running)
	h, err := leakage(t, 0.4, 0.65).house(o)
	require.NoError(t, err)
	assert.InDelta(t, -0.14, float64(h.Imbalance), 1e-15)
}

func TestHighestCaseRunsEverySupply(t *testing.T) {
	o, err := HighestCase(hood, dryer, bath, fresh, unit)
	require.NoError(t, err)
	assert.Equal(t, []string{"fresh air fan", "ventilator"}, o.Running)
}

// TestNoSubsetIsWorse tries every set of devices that can run.
func TestNoSubsetIsWorse(t *testing.T) {
	devices := []Device{hood, dryer, bath, fresh, unit, {Name: "defrosting", Exhaust: 0.05}, {Name: "exhaust fan", Exhaust: 0.01, Continuous: true}}
	l := leakage(t, 0.4, 0.65)
	worst, err := WorstCase(devices...)
	require.NoError(t, err)
	highest, err := HighestCase(devices...)
	require.NoError(t, err)
	ends, err := l.Pressures(worst, highest)
	require.NoError(t, err)
	for set := range 1 << len(devices) {
		var o Operation
		for i, d := range devices {
			if d.Continuous || set&(1<<i) != 0 {
				o.add(d)
			}
		}
		h, err := l.house(o)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, float64(h.Pressure), float64(ends[0].Pressure)-1e-9)
		assert.LessOrEqual(t, float64(h.Pressure), float64(ends[1].Pressure)+1e-9)
	}
}

func TestOneMoreExhaustNeverRaisesThePressure(t *testing.T) {
	l := leakage(t, 0.4, 0.65)
	var devices []Device
	last := q.Pressure(0)
	for _, d := range []Device{unit, bath, dryer, hood, bath} {
		devices = append(devices, d)
		o, err := WorstCase(devices...)
		require.NoError(t, err)
		h, err := l.house(o)
		require.NoError(t, err)
		assert.LessOrEqual(t, h.Pressure, last)
		last = h.Pressure
	}
}

func TestOperationRefusesWhatLiesOutside(t *testing.T) {
	l := leakage(t, 0.4, 0.65)
	bad := []q.Flow{q.Flow(math.NaN())}
	_, err := l.Pressures(Operation{Name: "a", Exhaust: bad})
	assert.ErrorContains(t, err, `operating state "a": exhaust flow`)
	_, err = l.Pressures(Operation{Name: "b", Supply: []q.Flow{-1}})
	assert.ErrorContains(t, err, "supply flow")
	_, err = l.Pressures(Operation{Name: "c", Makeup: []q.Flow{1000}})
	assert.ErrorContains(t, err, "makeup flow")
	_, err = Leakage{}.Pressures(Operation{Name: "d"})
	assert.ErrorIs(t, err, errNoLeakage)
	_, err = WorstCase(hood, Device{Name: "odd", Exhaust: bad[0]})
	assert.ErrorContains(t, err, `device "odd": exhaust flow`)
	_, err = HighestCase(Device{Name: "odd", Makeup: -1})
	assert.ErrorContains(t, err, "makeup flow")
	_, err = Lowest(nil)
	assert.ErrorContains(t, err, "no operating state")
}
