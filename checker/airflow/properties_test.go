package airflow

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func randomSection(t *testing.T, r *rand.Rand) Section {
	t.Helper()
	names := []string{"galvanized-steel", "flexible", "pvc", "lined"}
	m, err := MaterialNamed(names[r.IntN(len(names))])
	require.NoError(t, err)
	s := Section{Shape: round(t, q.Length(0.08+0.2*r.Float64())), Material: m, Length: q.Length(20 * r.Float64()), Coefficients: 3 * r.Float64()}
	if m.Flexible {
		s.Compression = q.Ratio(0.3 * r.Float64())
	}
	return s
}

func lossOf(t *testing.T, s Section, flow q.Flow) q.Pressure {
	t.Helper()
	l, err := s.Loss(flow, StandardAir())
	require.NoError(t, err)
	require.False(t, math.IsNaN(float64(l.Total)))
	return l.Total
}

// More length, more fittings, more compression, a smaller size and more flow never
// cost less.
func TestNothingBadCostsLess(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 5000 {
		s, flow := randomSection(t, r), q.Flow(0.2*r.Float64())
		base := lossOf(t, s, flow)
		longer, bent, smaller := s, s, s
		longer.Length *= 1.1
		bent.Coefficients += 0.2
		smaller.Shape = round(t, s.Shape.HydraulicDiameter()*0.97)
		assert.GreaterOrEqual(t, lossOf(t, longer, flow), base)
		assert.GreaterOrEqual(t, lossOf(t, bent, flow), base)
		assert.GreaterOrEqual(t, lossOf(t, smaller, flow), base)
		assert.GreaterOrEqual(t, lossOf(t, s, flow*1.01), base)
		if s.Material.Flexible {
			slack := s
			slack.Compression += 0.05
			assert.GreaterOrEqual(t, lossOf(t, slack, flow), base)
		}
	}
}

func randomTree(t *testing.T, r *rand.Rand, depth int) *Branch {
	b := &Branch{ID: "b", Section: randomSection(t, r)}
	if depth == 0 || r.IntN(3) == 0 {
		b.End = &End{ID: "end", Flow: q.Flow(0.005 + 0.02*r.Float64()), Stated: []StatedLoss{{q.Pressure(5 * r.Float64()), 0.02}}}
		return b
	}
	for range 1 + r.IntN(3) {
		b.Beyond = append(b.Beyond, randomTree(t, r, depth-1))
	}
	return b
}

// Every random tree is solved: flows add up, and every path loses the pressure.
func TestEveryTreeIsSolved(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 150 {
		tree := []*Branch{randomTree(t, r, 2), randomTree(t, r, 2)}
		pressure := q.Pressure(5 + 150*r.Float64())
		flows, err := Undamped(tree, pressure, StandardAir())
		require.NoError(t, err)
		at := map[*End]q.Flow{}
		i := 0
		each(tree, func(e *End) { at[e] = flows[i].Flow; i++ })
		require.Equal(t, len(flows), i)
		for _, b := range tree {
			checkLoss(t, b, at, 0, pressure)
		}
	}
}

func each(tree []*Branch, visit func(*End)) {
	for _, b := range tree {
		if b.End != nil {
			visit(b.End)
		}
		each(b.Beyond, visit)
	}
}

// checkLoss walks a solved tree and compares what each path loses.
func checkLoss(t *testing.T, b *Branch, at map[*End]q.Flow, before, pressure q.Pressure) {
	t.Helper()
	var flow q.Flow
	each([]*Branch{b}, func(e *End) { flow += at[e] })
	loss := before + lossOf(t, b.Section, flow)
	if b.End != nil {
		for _, s := range b.End.Stated {
			loss += s.at(flow)
		}
		assert.InEpsilon(t, float64(pressure), float64(loss), 1e-6)
	}
	for _, next := range b.Beyond {
		checkLoss(t, next, at, loss, pressure)
	}
}

func TestFactorIsContinuousAndFalls(t *testing.T) {
	for _, re := range []float64{laminarEnd, turbulentStart} {
		assert.InDelta(t, Factor(re*(1-1e-12), 1e-3), Factor(re*(1+1e-12), 1e-3), 1e-9)
	}
	assert.Zero(t, Factor(0, 1e-3))
	assert.InDelta(t, 0.064, Factor(1000, 1e-3), 1e-12)
}

func curve(t *testing.T, points ...FanPoint) Fan {
	t.Helper()
	f, err := NewFan(points)
	require.NoError(t, err)
	return f
}

func squared(p q.Pressure, at q.Flow) func(q.Flow) (q.Pressure, error) {
	return func(flow q.Flow) (q.Pressure, error) { return StatedLoss{p, at}.at(flow), nil }
}

func TestOperatingPoint(t *testing.T) {
	fan := curve(t, FanPoint{0, 200}, FanPoint{0.05, 100}, FanPoint{0.08, 0})
	on, err := fan.Operate(squared(100, 0.05), StandardAir())
	require.NoError(t, err)
	assert.InDelta(t, 0.05, float64(on.Flow), 1e-9)
	assert.Equal(t, OnCurve, on.Meeting)
	assert.InDelta(t, 100, float64(on.Pressure), 1e-6)

	short := curve(t, FanPoint{0.04, 120}, FanPoint{0.06, 80})
	below, err := short.Operate(squared(500, 0.04), StandardAir())
	require.NoError(t, err)
	assert.Equal(t, BelowCurve, below.Meeting)
	beyond, err := short.Operate(squared(1, 0.04), StandardAir())
	require.NoError(t, err)
	assert.Equal(t, BeyondCurve, beyond.Meeting)
	assert.InDelta(t, 0.06, float64(beyond.Flow), 1e-12)
}

// A unit that holds its flow up to a pressure limit.
func TestHeldFlow(t *testing.T) {
	fan := curve(t, FanPoint{0, 150}, FanPoint{0.05, 150}, FanPoint{0.05, 0})
	easy, err := fan.Operate(squared(60, 0.05), StandardAir())
	require.NoError(t, err)
	assert.InDelta(t, 0.05, float64(easy.Flow), 1e-9)
	hard, err := fan.Operate(squared(300, 0.05), StandardAir())
	require.NoError(t, err)
	assert.InDelta(t, 0.05*math.Sqrt(0.5), float64(hard.Flow), 1e-9)
}

// Thin air: a fan gives less pressure, so the same fixed loss costs flow.
func TestDensityCorrection(t *testing.T) {
	fan := curve(t, FanPoint{0, 200}, FanPoint{0.08, 0})
	high, err := AirAt(80_000, 293.15)
	require.NoError(t, err)
	at, err := fan.Operate(squared(100, 0.05), StandardAir())
	require.NoError(t, err)
	thin, err := fan.Operate(squared(100, 0.05), high)
	require.NoError(t, err)
	assert.Less(t, thin.Flow, at.Flow)
}

func TestClearErrors(t *testing.T) {
	_, err := CoefficientOf("elbow-90-smoth")
	assert.EqualError(t, err, `no loss coefficient for fitting "elbow-90-smoth": give loss_coefficient, or did you mean "elbow-90-smooth"?`)
	_, err = MaterialNamed("bamboo")
	assert.ErrorContains(t, err, "expected one of aluminium")
	_, err = Paths(nil, 1, StandardAir())
	assert.Error(t, err)
	dangling := &Branch{ID: "stub", Section: Section{Shape: round(t, 0.1)}}
	_, err = Paths([]*Branch{dangling}, 1, StandardAir())
	assert.ErrorContains(t, err, `duct "stub": nothing lies beyond it`)
	_, err = NewFan([]FanPoint{{0, 100}, {0.1, 120}})
	assert.ErrorContains(t, err, "point 2")
	_, err = NewFan([]FanPoint{{0, 100}})
	assert.Error(t, err)
	_, err = Round(0)
	assert.Error(t, err)
	_, err = AirAt(1, 293)
	assert.Error(t, err)
	zero := lossOf(t, Section{Shape: round(t, 0.1)}, 0)
	assert.Zero(t, zero)
}

func BenchmarkUndamped(b *testing.B) {
	t := &testing.T{}
	tree := []*Branch{randomTree(t, rand.New(rand.NewPCG(5, 6)), 2)}
	for b.Loop() {
		if _, err := Undamped(tree, 60, StandardAir()); err != nil {
			b.Fatal(err)
		}
	}
}
