package moistair

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// closes holds that dry air, water and enthalpy that enter a core leave it, to a
// billionth of what is exchanged or carried.
func closes(t testing.TB, o Operation, x Exchange) {
	t.Helper()
	in := flows(o.Outdoor, o.Supply).plus(flows(o.Indoor, o.Extract))
	in.heat += float64(o.SupplyFan + o.ExhaustFan)
	out := flows(x.Supply, o.Supply).plus(flows(x.Exhaust, o.Extract)).
		plus(leaving(x.SupplyWater, waterTemperature(x.Supply, o.SupplyFan, o.Supply))).
		plus(leaving(x.ExhaustWater, waterTemperature(x.Exhaust, o.ExhaustFan, o.Extract)))
	assert.InDelta(t, in.water, out.water, 1e-9*in.water+1e-18, "water")
	assert.InDelta(t, in.heat, out.heat, 1e-9*in.scale, "enthalpy")
}

// carried is water and heat per second; scale is the size of the heats added.
type carried struct{ water, heat, scale float64 }

func (c carried) plus(d carried) carried {
	return carried{c.water + d.water, c.heat + d.heat, c.scale + d.scale}
}

func flows(s State, m MassFlow) carried {
	h := float64(m) * float64(s.Enthalpy())
	return carried{float64(m) * float64(s.HumidityRatio()), h, math.Abs(h) + float64(m)*1000}
}

func leaving(c Condensate, t q.Temperature) carried {
	h := float64(c.Liquid)*float64(WaterEnthalpy(t)) + float64(c.Ice)*float64(IceEnthalpy(t))
	return carried{float64(c.Total()), h, math.Abs(h)}
}

// waterTemperature is the temperature of a stream before its fan.
func waterTemperature(s State, fan q.Power, m MassFlow) q.Temperature {
	w := float64(s.HumidityRatio())
	return s.DryBulb() - q.Temperature(float64(fan)/float64(m)/(1006+1860*w))
}

// TestBalancesClose draws cores, airs and flows at random, with a fixed seed.
func TestBalancesClose(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	var condensing, freezing, melting int
	for range 5000 {
		o := Operation{
			Outdoor: air(t, -45+90*r.Float64(), r.Float64()), Indoor: air(t, 15+13*r.Float64(), r.Float64()),
			Supply: MassFlow(0.01 + 0.2*r.Float64()), Extract: MassFlow(0.01 + 0.2*r.Float64()),
			SupplyFan: q.Power(60 * r.Float64()), ExhaustFan: q.Power(60 * r.Float64()),
		}
		c := Core{Sensible: q.Ratio(r.Float64()), Latent: q.Ratio(r.Float64() * float64(r.IntN(2)))}
		x := run(t, c, o)
		closes(t, o, x)
		condensing += count(x.ExhaustWater.Liquid > 0)
		freezing += count(x.ExhaustWater.Ice > 0)
		melting += count(x.ExhaustWater.Ice > 0 && x.ExhaustWater.Liquid > 0)
	}
	assert.Greater(t, min(condensing, freezing, melting), 10, "every kind of condensate is met: %d %d %d", condensing, freezing, melting)
}

func count(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

func TestUnequalFlowsShareTheSmallerStream(t *testing.T) {
	o := Operation{Outdoor: air(t, -10, 0.8), Indoor: air(t, 21, 0.3), Supply: 0.08, Extract: 0.04}
	x := run(t, Core{Sensible: 0.8}, o)
	assert.InDelta(t, -10+0.8*0.5*31, inCelsius(x.Supply.DryBulb()), 1e-9)
	assert.InDelta(t, 21-0.8*31, inCelsius(x.DryExhaust), 1e-9)
	o.Supply, o.Extract = 0.04, 0.08
	x = run(t, Core{Sensible: 0.8}, o)
	assert.InDelta(t, -10+0.8*31, inCelsius(x.Supply.DryBulb()), 1e-9)
	assert.InDelta(t, 21-0.8*0.5*31, inCelsius(x.DryExhaust), 1e-9)
}

func TestFanHeatWarmsItsStream(t *testing.T) {
	o := even(air(t, -5, 0.6), air(t, 21, 0.3))
	still := run(t, Core{Sensible: 0.7}, o)
	o.SupplyFan, o.ExhaustFan = 30, 45
	x := run(t, Core{Sensible: 0.7}, o)
	closes(t, o, x)
	assert.InDelta(t, 30/(0.06*1006), float64(x.Supply.DryBulb()-still.Supply.DryBulb()), 0.003)
	assert.InDelta(t, 45/(0.06*1006), float64(x.Exhaust.DryBulb()-still.Exhaust.DryBulb()), 0.01)
	assert.Equal(t, still.Heat, x.Heat, "heat recovered leaves fans out")
}

func TestCoreOnlyEffectivenessWithFansGivesTheApparentSupply(t *testing.T) {
	rating := Rating{0.06, 0.06, 30, 30, celsius(0), celsius(22)}
	only, err := rating.CoreOnly(0.75)
	require.NoError(t, err)
	dry, err := FromHumidityRatio(celsius(0), 0, ground)
	require.NoError(t, err)
	o := even(dry, air(t, 22, 0.1))
	apparent := run(t, Core{Sensible: 0.75}, o)
	o.SupplyFan = 30
	assert.InDelta(t, float64(apparent.Supply.DryBulb()), float64(run(t, Core{Sensible: only}, o).Supply.DryBulb()), 1e-9)
}

func TestTransferLeavesTheAirAndDilutesTheFlow(t *testing.T) {
	o := even(air(t, -5, 0.6), air(t, 21, 0.3))
	tight, leaky := run(t, Core{Sensible: 0.7}, o), run(t, Core{Sensible: 0.7, Transfer: 0.05}, o)
	assert.Equal(t, tight.Supply, leaky.Supply)
	assert.InDelta(t, 0.06, float64(tight.OutdoorAir), 1e-15)
	assert.InDelta(t, 0.057, float64(leaky.OutdoorAir), 1e-15)
}

func TestHumidSummerAirCondensesOnTheSupplySide(t *testing.T) {
	o := even(air(t, 35, 0.9), air(t, 22, 0.5))
	x := run(t, Core{Sensible: 0.8}, o)
	closes(t, o, x)
	assert.Positive(t, float64(x.SupplyWater.Liquid))
	assert.Zero(t, x.ExhaustWater)
	assert.True(t, x.Condenses())
	assert.False(t, x.Frost)
	assert.InDelta(t, 1, float64(x.Supply.RelativeHumidity()), 1e-9)
}

func TestIdleCorePassesAirUnchanged(t *testing.T) {
	o := even(air(t, -15, 0.7), air(t, 21, 0.4))
	x := run(t, Core{}, o)
	assert.InDelta(t, float64(o.Outdoor.DryBulb()), float64(x.Supply.DryBulb()), 1e-9)
	assert.InDelta(t, float64(o.Indoor.DryBulb()), float64(x.Exhaust.DryBulb()), 1e-9)
	assert.InDelta(t, 0, float64(x.Heat), 1e-6)
	assert.Zero(t, x.Moisture)
	assert.False(t, x.Condenses())
}

func TestEffectivenessIsFoundAgain(t *testing.T) {
	for _, m := range [][2]MassFlow{{0.06, 0.06}, {0.05, 0.07}, {0.07, 0.05}} {
		o := Operation{Outdoor: air(t, 2, 0.5), Indoor: air(t, 21, 0.4), Supply: m[0], Extract: m[1]}
		x := run(t, Core{Sensible: 0.72, Latent: 0.41}, o)
		require.False(t, x.Condenses())
		r, err := Recovered(o.Outdoor, x.Supply, o.Indoor, m[0], m[1])
		require.NoError(t, err)
		assert.InDelta(t, 0.72, float64(r.Sensible.Value), 1e-9)
		assert.InDelta(t, 0.41, float64(r.Latent.Value), 1e-9)
		assert.True(t, r.Sensible.Known && r.Latent.Known && r.Total.Known)
	}
}

func TestRecoveryBetweenEqualAirsIsUnknown(t *testing.T) {
	s := air(t, 21, 0.4)
	r, err := Recovered(s, s, s, 0.06, 0.06)
	require.NoError(t, err)
	assert.Equal(t, Recovery{}, r)
	_, err = Recovered(s, State{}, s, 0.06, 0.06)
	assert.ErrorContains(t, err, "supply air is not given")
}
