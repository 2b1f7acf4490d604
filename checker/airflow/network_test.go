package airflow

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// solved is a network that network.py solved with python3-scipy. A run is parent,
// diameter, length, roughness, coefficient, stated loss, its flow, exponent, flow found.
type solved struct {
	Total, Pressure, Operating float64
	FanFlow                    []float64 `toml:"fan_flow"`
	FanPressure                []float64 `toml:"fan_pressure"`
	Runs                       [][9]float64
}

func (n solved) build(t testing.TB) (runs []Run, ends []End) {
	inner := map[int]bool{}
	for _, r := range n.Runs {
		inner[int(r[0])] = true
	}
	for i, r := range n.Runs {
		run := Run{ID: fmt.Sprint("run ", i), From: fmt.Sprint("node ", int(r[0])), To: fmt.Sprint("node ", i)}
		run.Sections = []Section{{Shape: round(t, q.Length(r[1])), Material: rough(q.Length(r[3])), Length: q.Length(r[2]), Fittings: coefficients(r[4])}}
		runs = append(runs, run)
		if !inner[i] {
			ends = append(ends, End{run.To, []StatedLoss{{"grille", q.Pressure(r[5]), q.Flow(r[6]), r[7]}}})
		}
	}
	return runs, ends
}

// TestNetworksSolvedByScipy compares flows, pressures and operating points with
// another formulation and another solver.
func TestNetworksSolvedByScipy(t *testing.T) {
	var f struct{ Network []solved }
	published.Read(t, "network", &f)
	require.Len(t, f.Network, 40)
	for i, n := range f.Network {
		runs, ends := n.build(t)
		s, err := NewSystem(StandardAir(), "node -1", runs, ends)
		require.NoError(t, err)
		loss, err := s.Open(q.Flow(n.Total))
		require.NoError(t, err)
		assert.InEpsilon(t, n.Pressure, float64(loss.Pressure), 1e-6, "network %d", i)
		for _, r := range loss.Outlet.Runs {
			var number int
			_, err := fmt.Sscanf(r.ID, "run %d", &number)
			require.NoError(t, err)
			assert.InEpsilon(t, n.Runs[number][8], float64(r.Flow), 1e-6, "network %d, %s", i, r.ID)
		}
		var points []Point
		for k := range n.FanFlow {
			points = append(points, Point{q.Flow(n.FanFlow[k]), q.Pressure(n.FanPressure[k])})
		}
		fan, err := NewCurve(points...)
		require.NoError(t, err)
		at, err := s.MeetOpen(fan)
		require.NoError(t, err)
		assert.Equal(t, OnCurve, at.Meeting)
		assert.InEpsilon(t, n.Operating, float64(at.Flow), 1e-7, "network %d", i)
	}
}

// TestOpenConservesFlowAndEvensPressures is what Open promises, on the inlet and the
// outlet side.
func TestOpenConservesFlowAndEvensPressures(t *testing.T) {
	runs, ends := house(t)
	runs = append(runs, pipe(t, "other", "second intake", "unit", 0.1, 8))
	s := newSystem(t, runs, append(ends, End{"second intake", []StatedLoss{{"hood", 30, 0.05, 2}}}))
	loss, err := s.Open(0.05)
	require.NoError(t, err)
	even(t, loss, 0.05)
	assert.Positive(t, loss.Iterations)
	assert.Greater(t, endOf(t, loss, "intake").Flow, endOf(t, loss, "second intake").Flow)
	still, err := s.Open(0)
	require.NoError(t, err)
	assert.Zero(t, still.Pressure)
}

func even(t testing.TB, l *Losses, total float64) {
	t.Helper()
	for _, side := range []SideLoss{l.Inlet, l.Outlet} {
		var sum float64
		for _, e := range side.Ends {
			sum += float64(e.Flow)
			if !(e.Flow >= 0) || !(math.Abs(float64(e.Sum-side.Pressure)) <= unevenAccepted*float64(side.Pressure)) || e.Damper != 0 {
				t.Fatalf("end %q: flow %v, sum %v of %v, damper %v", e.ID, float64(e.Flow), e.Sum, side.Pressure, e.Damper)
			}
		}
		if len(side.Ends) > 0 && !(math.Abs(sum-total) <= 1e-9*total) {
			t.Fatalf("ends carry %v of %v", sum, total)
		}
	}
}

// TestEqualBranchesShareEqually and TestParallelSquareLaws have solutions by hand.
func TestEqualBranchesShareEqually(t *testing.T) {
	var runs []Run
	var ends []End
	for i := range 7 {
		room := fmt.Sprint("room ", i)
		runs = append(runs, pipe(t, fmt.Sprint("run ", i), "unit", room, 0.1, 6))
		ends = append(ends, End{ID: room})
	}
	loss, err := newSystem(t, runs, ends).Open(0.07)
	require.NoError(t, err)
	for _, e := range loss.Outlet.Ends {
		assert.InDelta(t, 0.01, float64(e.Flow), 1e-12)
	}
}

// TestParallelSquareLaws: losses k Q^2 side by side carry 1/sqrt(k) each.
func TestParallelSquareLaws(t *testing.T) {
	losses := []q.Pressure{10, 40, 90, 1000}
	var runs []Run
	var ends []End
	shares := 0.0
	for i, p := range losses {
		id := fmt.Sprint("room ", i)
		runs = append(runs, bare(fmt.Sprint("run ", i), "unit", id))
		ends = append(ends, End{id, []StatedLoss{{"valve", p, 0.01, 2}}})
		shares += 1 / math.Sqrt(float64(p))
	}
	loss, err := newSystem(t, runs, ends).Open(0.05)
	require.NoError(t, err)
	for i, e := range loss.Outlet.Ends {
		assert.InEpsilon(t, 0.05/math.Sqrt(float64(losses[i]))/shares, float64(e.Flow), 1e-8)
	}
	assert.InEpsilon(t, math.Pow(0.05/shares/0.01, 2), float64(loss.Pressure), 1e-8)
}

func TestWaysWithoutResistance(t *testing.T) {
	grille := []StatedLoss{{"grille", 10, 0.02, 2}}
	for name, c := range map[string]struct {
		runs []Run
		ends []End
		want string
	}{
		"at the fan":   {[]Run{bare("a", "unit", "x"), pipe(t, "b", "unit", "y", 0.1, 1)}, []End{{ID: "x"}, {ID: "y"}}, "x"},
		"at a tee":     {[]Run{pipe(t, "a", "unit", "tee", 0.1, 1), bare("b", "tee", "x"), pipe(t, "c", "tee", "y", 0.1, 1)}, []End{{ID: "x"}, {ID: "y"}}, "x"},
		"in two steps": {[]Run{bare("a", "unit", "b"), bare("b2", "b", "x"), bare("c", "unit", "y")}, []End{{ID: "x"}, {"y", grille}}, "x"},
		"side grille":  {[]Run{pipe(t, "a", "unit", "x", 0.1, 1), pipe(t, "b", "x", "y", 0.1, 1)}, []End{{ID: "x"}, {"y", grille}}, "x"},
	} {
		s := newSystem(t, c.runs, c.ends)
		_, err := s.Open(0.01)
		var free *NoResistance
		require.ErrorAs(t, err, &free, name)
		assert.Equal(t, c.want, free.End, name)
		_, err = s.MeetOpen(curveOf(t, 0, 100, 0.1, 0))
		assert.ErrorContains(t, err, "the way from the last junction loses nothing", name)
	}
	single := newSystem(t, []Run{bare("a", "unit", "x")}, []End{{ID: "x"}})
	loss, err := single.Open(0.01)
	require.NoError(t, err, "there is only one way")
	assert.Zero(t, loss.Pressure)
}

// tree is a random system of 2 to 60 runs: any sizes, materials, fittings and
// stated losses, with ways that differ by many orders of magnitude.
func tree(t testing.TB, r *rand.Rand) ([]Run, []End) {
	n := 2 + r.IntN(59)
	var runs []Run
	leaf := make([]bool, n)
	for i := range n {
		from := "unit"
		if i > 0 && r.IntN(6) > 0 {
			parent := r.IntN(i)
			from, leaf[parent] = fmt.Sprint("n", parent), false
		}
		leaf[i] = true
		s := Section{Shape: round(t, q.Length(0.03*math.Pow(20, r.Float64()))), Material: materials[r.IntN(len(materials))], Length: q.Length(100 * math.Pow(r.Float64(), 4))}
		s.Material.Roughness = min(s.Material.Roughness, s.Shape.HydraulicDiameter()/21)
		if r.IntN(3) == 0 {
			s.Fittings = []Fitting{knownFittings()[r.IntN(len(knownFittings()))].Times(1 + r.IntN(5))}
		}
		runs = append(runs, Run{ID: fmt.Sprint("r", i), From: from, To: fmt.Sprint("n", i), Sections: []Section{s}})
	}
	var ends []End
	for i := range n {
		if leaf[i] || r.IntN(5) == 0 {
			e := End{ID: fmt.Sprint("n", i)}
			if !leaf[i] || r.IntN(2) == 0 {
				e.Losses = []StatedLoss{{"grille", q.Pressure(math.Pow(10, 3*r.Float64())), q.Flow(0.001 + 0.1*r.Float64()), 1 + r.Float64()}}
			}
			ends = append(ends, e)
		}
	}
	return runs, ends
}

// TestThousandsOfRandomTrees holds that the solver converges on each, within a
// bounded number of steps, and conserves flow.
func TestThousandsOfRandomTrees(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	trees, most, sum := 2000, 0, 0
	if testing.Short() {
		trees = 300
	}
	for i := range trees {
		runs, ends := tree(t, r)
		s, err := NewSystem(StandardAir(), "unit", runs, ends)
		require.NoError(t, err)
		n, err := s.open()
		require.NoError(t, err)
		total := math.Pow(10, -6+7*r.Float64())
		if err := n.solve(total); err != nil {
			t.Fatalf("tree %d of %d runs at %v: %v", i, len(runs), total, err)
		}
		most, sum = max(most, n.iterations), sum+n.iterations
		checkNetwork(t, n, total)
	}
	t.Logf("%d trees: at most %d steps, %.1f on average", trees, most, float64(sum)/float64(trees))
	assert.LessOrEqual(t, most, mostSteps/4)
}

// radial is a tree of small plastic ducts in which flow is about to become
// turbulent, where losses rise steepest.
func radial(t testing.TB, r *rand.Rand) (runs []Run, ends []End, total float64) {
	n := 2 + r.IntN(12)
	material := rough(3 * mm * q.Length(r.Float64()*r.Float64()))
	leaf := make([]bool, n)
	for i := range n {
		from := "unit"
		if i > 0 && r.IntN(3) > 0 {
			parent := r.IntN(i)
			from, leaf[parent] = fmt.Sprint("n", parent), false
		}
		leaf[i] = true
		s := Section{Shape: round(t, q.Length(0.06+0.04*r.Float64())), Material: material, Length: q.Length(1 + 10*r.Float64())}
		runs = append(runs, Run{ID: fmt.Sprint("r", i), From: from, To: fmt.Sprint("n", i), Sections: []Section{s}})
	}
	for i := range n {
		if leaf[i] {
			ends = append(ends, End{ID: fmt.Sprint("n", i)})
			total += (1500 + 1200*r.Float64()) * 1.506e-5 * math.Pi / 4 * 0.075
		}
	}
	return runs, ends, total
}

func TestThousandsOfTreesAboutToBecomeTurbulent(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 17))
	trees, most, sum := 2000, 0, 0
	if testing.Short() {
		trees = 300
	}
	for i := range trees {
		runs, ends, total := radial(t, r)
		n, err := newSystem(t, runs, ends).open()
		require.NoError(t, err)
		if err := n.solve(total); err != nil {
			t.Fatalf("tree %d of %d runs at %v: %v", i, len(runs), total, err)
		}
		most, sum = max(most, n.iterations), sum+n.iterations
		checkNetwork(t, n, total)
	}
	t.Logf("%d trees: at most %d steps, %.1f on average", trees, most, float64(sum)/float64(trees))
	assert.LessOrEqual(t, most, mostSteps/4)
}

func checkNetwork(t testing.TB, n *network, total float64) {
	t.Helper()
	side, a := &n.System.outlet, n.outlet
	if u := side.uneven(a, total); !(u <= unevenAccepted) {
		t.Fatalf("ways from a junction differ by %v", u)
	}
	if sum := a.sum(side.roots); !(math.Abs(sum-total) <= 1e-9*total) {
		t.Fatalf("the fan moves %v of %v", sum, total)
	}
	for i, b := range side.branches {
		if !(a[i] >= 0) || b.run >= 0 && !(math.Abs(a.sum(b.children)-a[i]) <= 1e-9*total) {
			t.Fatalf("branch %q carries %v, beyond it %v", b.id, a[i], a.sum(b.children))
		}
	}
}

func TestNotConvergedIsTold(t *testing.T) {
	err := error(&NotConverged{100, 0.03})
	assert.EqualError(t, err, `flows did not converge in 100 steps, the ways from a junction still differ by "3 %"`)
}
