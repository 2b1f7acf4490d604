package airflow

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// randomSection is any duct of a house.
func randomSection(t testing.TB, r *rand.Rand) Section {
	s := Section{Shape: round(t, q.Length(0.06+0.3*r.Float64())), Material: materials[r.IntN(len(materials))], Length: q.Length(20 * r.Float64())}
	if r.IntN(3) == 0 {
		flat, err := Rectangular(q.Length(0.06+0.3*r.Float64()), q.Length(0.06+0.3*r.Float64()))
		require.NoError(t, err)
		s.Shape = flat
	} else if s.Material.Compressible {
		s.Compression = q.Ratio(0.45 * r.Float64())
	}
	s.Material.Roughness = min(s.Material.Roughness, s.Shape.HydraulicDiameter()/25)
	for range r.IntN(4) {
		s.Fittings = append(s.Fittings, knownFittings()[r.IntN(len(knownFittings()))].Times(1+r.IntN(3)))
	}
	return s
}

// TestMoreIsNeverLess changes one thing at a time: more length, one elbow more, a
// smaller size, a rougher wall, more compression, and more flow never lose less.
func TestMoreIsNeverLess(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 23))
	for range 20_000 {
		s, flow := randomSection(t, r), q.Flow(math.Pow(10, -5+4*r.Float64()))
		base, err := s.Loss(StandardAir(), flow)
		if err != nil {
			require.ErrorContains(t, err, "velocity")
			continue
		}
		for name, harder := range map[string]Section{
			"length":    longer(s),
			"elbow":     withElbow(s),
			"roughness": rougher(s),
			"size":      smaller(t, s, r),
		} {
			loss, err := harder.Loss(StandardAir(), flow)
			if err != nil {
				require.ErrorContains(t, err, "velocity")
				continue
			}
			require.GreaterOrEqual(t, float64(loss.Total), float64(base.Total)*(1-1e-12), "%s: %v at %v", name, s, flow)
		}
		more, err := s.Loss(StandardAir(), flow*q.Flow(1+r.Float64()))
		if err == nil {
			require.GreaterOrEqual(t, more.Total, base.Total, "flow: %v at %v", s, flow)
		}
	}
}

func longer(s Section) Section {
	s.Length *= 1.01
	return s
}

func withElbow(s Section) Section {
	s.Fittings = append([]Fitting{{Name: "elbow", Count: 1, Coefficient: 0.22}}, s.Fittings...)
	return s
}

func rougher(s Section) Section {
	s.Material.Roughness *= 1.05
	return s
}

// smaller shrinks one or both sides. Compression is left out: its factor falls with
// the diameter by its equation.
func smaller(t testing.TB, s Section, r *rand.Rand) Section {
	shrink := func(x float64) q.Length { return max(leastSide*2, q.Length(x*(0.9+0.1*r.Float64()))) }
	if s.Shape.round() {
		s.Shape = round(t, shrink(s.Shape.width))
	} else {
		flat, err := Rectangular(shrink(s.Shape.width), q.Length(s.Shape.height))
		require.NoError(t, err)
		s.Shape = flat
	}
	s.Material.Roughness = min(s.Material.Roughness, s.Shape.HydraulicDiameter()/20)
	return s
}

func TestMoreCompressionNeverLosesLess(t *testing.T) {
	s := Section{Shape: round(t, 0.15), Material: named(t, "flexible"), Length: 3}
	before := q.Pressure(0)
	for percent := 0.0; percent <= 45; percent += 0.5 {
		s.Compression = q.Ratio(percent / 100)
		loss := lossOf(t, StandardAir(), s, 0.04)
		assert.Greater(t, loss.Total, before)
		before = loss.Total
	}
}

// TestMoreRunNeverDeliversMore holds for whole systems: a longer run anywhere needs
// no less pressure, and the fan delivers no more.
func TestMoreRunNeverDeliversMore(t *testing.T) {
	fan := curveOf(t, 0, 200, 0.03, 120, 0.06, 60, 0.08, 0)
	runs, ends := house(t)
	s := newSystem(t, runs, ends)
	design, err := s.Design(houseFlows)
	require.NoError(t, err)
	damped, err := s.MeetDamped(fan, houseFlows)
	require.NoError(t, err)
	open, err := s.MeetOpen(fan)
	require.NoError(t, err)
	for i := range runs {
		longer, _ := house(t)
		longer[i].Sections[0].Length *= 2
		s := newSystem(t, longer, ends)
		more, err := s.Design(houseFlows)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, more.Pressure, design.Pressure, runs[i].ID)
		o, err := s.MeetDamped(fan, houseFlows)
		require.NoError(t, err)
		assert.LessOrEqual(t, float64(o.Flow), float64(damped.Flow)*(1+1e-9), runs[i].ID)
		o, err = s.MeetOpen(fan)
		require.NoError(t, err)
		assert.LessOrEqual(t, float64(o.Flow), float64(open.Flow)*(1+1e-9), runs[i].ID)
	}
}

// TestOrderOfRunsChangesNothing shuffles runs and ends.
func TestOrderOfRunsChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(29, 31))
	runs, ends := house(t)
	want, err := newSystem(t, runs, ends).Open(0.05)
	require.NoError(t, err)
	for range 50 {
		r.Shuffle(len(runs), func(i, j int) { runs[i], runs[j] = runs[j], runs[i] })
		r.Shuffle(len(ends), func(i, j int) { ends[i], ends[j] = ends[j], ends[i] })
		got, err := newSystem(t, runs, ends).Open(0.05)
		require.NoError(t, err)
		assert.InEpsilon(t, float64(want.Pressure), float64(got.Pressure), 1e-9)
		for _, e := range want.Outlet.Ends {
			assert.InEpsilon(t, float64(e.Flow), float64(endOf(t, got, e.ID).Flow), 1e-8)
		}
	}
}

// TestInverseOfLoss holds that Flow undoes Loss.
func TestInverseOfLoss(t *testing.T) {
	r := rand.New(rand.NewPCG(37, 41))
	for range 5000 {
		s, flow := randomSection(t, r), q.Flow(math.Pow(10, -5+4*r.Float64()))
		s.Length = max(s.Length, 0.01)
		loss, err := s.Loss(StandardAir(), flow)
		if err != nil || loss.Total > mostPressure {
			continue
		}
		back, err := s.Flow(StandardAir(), loss.Total)
		require.NoError(t, err)
		require.InEpsilon(t, float64(flow), float64(back), 1e-7, "%v", s)
	}
}
