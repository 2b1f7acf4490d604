package airflow

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// branched is the handbook's complete system and what it prints for it.
type branched struct {
	Air struct{ Density, Viscosity float64 }
	Run []struct {
		ID, From, To            string
		Diameter, Width, Height q.Length
		Length                  q.Length
		Coefficients            []float64
		Flow                    q.Flow
		Velocity                float64
		VelocityPressure        float64 `toml:"velocity_pressure"`
		Friction, Fittings      float64
		Total                   float64
	}
	Path []struct {
		End              string
		Total, Unbalance float64
	}
}

func readBranched(t testing.TB) (f branched, s *System, flows Flows) {
	t.Helper()
	published.Read(t, "branched-system", &f)
	require.Len(t, f.Run, 9)
	flows = Flows{}
	var runs []Run
	for _, r := range f.Run {
		shape, err := Rectangular(max(r.Width, 0.01), max(r.Height, 0.01))
		require.NoError(t, err)
		if r.Diameter > 0 {
			shape = round(t, r.Diameter)
		}
		runs = append(runs, Run{ID: r.ID, From: r.From, To: r.To, Sections: []Section{{Shape: shape, Material: rough(0.12 * mm), Length: r.Length, Fittings: coefficients(r.Coefficients...)}}})
		flows[r.ID] = r.Flow
	}
	s, err := NewSystem(airOf(f.Air.Density, f.Air.Viscosity), "fan", runs, []End{{ID: "A"}, {ID: "B"}, {ID: "C"}, {ID: "D"}})
	require.NoError(t, err)
	return f, s, flows
}

// TestCompleteSystemOfTheHandbook goes through every printed figure of a supply
// system with four outlets at elevation.
func TestCompleteSystemOfTheHandbook(t *testing.T) {
	f, s, flows := readBranched(t)
	loss, err := s.Design(flows)
	require.NoError(t, err)
	for _, r := range f.Run {
		got, found := loss.Run(r.ID)
		require.True(t, found, r.ID)
		g := got.Sections[0]
		assert.InDelta(t, r.Velocity, float64(g.Velocity), 0.06, r.ID)
		assert.InDelta(t, r.VelocityPressure, float64(g.VelocityPressure), 1, r.ID)
		if r.Total > 0 {
			assert.InDelta(t, r.Total, float64(got.Loss), 3, r.ID)
			continue
		}
		assert.InDelta(t, r.Friction, float64(g.Straight), 1, r.ID)
		assert.InDelta(t, r.Fittings, float64(g.Fitted), 1, r.ID)
	}
	require.Len(t, loss.Outlet.Ends, len(f.Path))
	for _, p := range f.Path {
		e := endOf(t, loss, p.End)
		assert.InDelta(t, p.Total, float64(e.Sum), 3, p.End)
		assert.InDelta(t, p.Unbalance, 100*float64(e.Damper/loss.Outlet.Pressure), 1, p.End)
	}
	assert.Equal(t, "D", loss.Outlet.Critical)
	assert.Equal(t, loss.Pressure, loss.Outlet.Pressure)
	assert.Equal(t, SideLoss{}, loss.Inlet)
	assert.Equal(t, []string{"a", "b", "c", "d", "e", "f"}, endOf(t, loss, "D").Path)
	assert.InDelta(t, 1.52, float64(loss.Flow), 1e-12)
	_, found := loss.Run("A")
	assert.False(t, found)
	_, found = loss.End("a")
	assert.False(t, found)
}

func endOf(t testing.TB, l *Losses, id string) EndLoss {
	t.Helper()
	e, found := l.End(id)
	require.True(t, found, id)
	return e
}

func pipe(t testing.TB, id, from, to string, d, length q.Length) Run {
	t.Helper()
	return Run{ID: id, From: from, To: to, Sections: []Section{{Shape: round(t, d), Material: rough(0.09 * mm), Length: length}}}
}

// house is a small ventilator: an intake, a trunk, two bedrooms beyond it, and one
// room straight from the unit.
func house(t testing.TB) ([]Run, []End) {
	t.Helper()
	hood := StatedLoss{"hood", 15, 0.05, 2}
	grille := StatedLoss{"grille", 7.5, 0.014, 2}
	return []Run{
			pipe(t, "fresh", "intake", "unit", 0.15, 3),
			pipe(t, "trunk", "unit", "tee", 0.15, 6),
			pipe(t, "first", "tee", "bed-1", 0.1, 5),
			pipe(t, "second", "tee", "bed-2", 0.1, 9),
			pipe(t, "third", "unit", "living", 0.125, 4),
		}, []End{
			{"intake", []StatedLoss{hood}}, {"bed-1", []StatedLoss{grille}}, {"bed-2", []StatedLoss{grille}}, {"living", []StatedLoss{grille}},
		}
}

func newSystem(t testing.TB, runs []Run, ends []End) *System {
	t.Helper()
	s, err := NewSystem(StandardAir(), "unit", runs, ends)
	require.NoError(t, err)
	return s
}

var houseFlows = Flows{"bed-1": 0.012, "bed-2": 0.010, "living": 0.020}

func TestBothSidesOfAFan(t *testing.T) {
	s := newSystem(t, first(house(t)), second(house(t)))
	loss, err := s.Design(houseFlows)
	require.NoError(t, err)
	assert.InDelta(t, 0.042, float64(loss.Flow), 1e-12)
	assert.Equal(t, loss.Pressure, loss.Inlet.Pressure+loss.Outlet.Pressure)
	assert.InDelta(t, 0.042, float64(endOf(t, loss, "intake").Flow), 1e-12, "follows from the rooms")
	for _, e := range loss.Outlet.Ends {
		assert.InDelta(t, float64(loss.Outlet.Pressure), float64(e.Sum+e.Damper), 1e-12)
		assert.GreaterOrEqual(t, e.Damper, q.Pressure(0))
	}
	assert.Equal(t, []string{"trunk", "second"}, endOf(t, loss, "bed-2").Path)
	assert.InDelta(t, 15*(0.042/0.05)*(0.042/0.05), float64(endOf(t, loss, "intake").Loss), 1e-12)
}

func first[A, B any](a A, _ B) A  { return a }
func second[A, B any](_ A, b B) B { return b }

// TestExtractIsTheMirrorOfSupply turns every run round: the same losses.
func TestExtractIsTheMirrorOfSupply(t *testing.T) {
	runs, ends := house(t)
	supply, err := newSystem(t, runs, ends).Design(houseFlows)
	require.NoError(t, err)
	for i, r := range runs {
		runs[i].From, runs[i].To = r.To, r.From
	}
	extract, err := newSystem(t, runs, ends).Design(houseFlows)
	require.NoError(t, err)
	assert.Equal(t, supply.Inlet, extract.Outlet)
	assert.Equal(t, supply.Outlet, extract.Inlet)
}

func TestClosedEndsZeroLengthAndZeroFlow(t *testing.T) {
	runs, ends := house(t)
	runs = append(runs, pipe(t, "none", "unit", "store", 0.1, 0))
	s := newSystem(t, runs, append(ends, End{ID: "store"}))
	flows := Flows{"bed-1": 0.012, "bed-2": 0, "living": 0.020, "store": 0.003}
	loss, err := s.Design(flows)
	require.NoError(t, err)
	assert.True(t, endOf(t, loss, "bed-2").Closed())
	assert.Zero(t, endOf(t, loss, "bed-2").Loss)
	store := endOf(t, loss, "store")
	assert.Zero(t, store.Sum, "a run without length loses nothing")
	assert.Equal(t, loss.Outlet.Pressure, store.Damper)

	nothing, err := s.Design(Flows{"bed-1": 0, "bed-2": 0, "living": 0, "store": 0})
	require.NoError(t, err)
	assert.Zero(t, nothing.Pressure)
	assert.Zero(t, nothing.Flow)
	assert.True(t, endOf(t, nothing, "intake").Closed())
	_, err = s.Damped(Flows{"bed-1": 0, "bed-2": 0, "living": 0, "store": 0}, 0.01)
	assert.EqualError(t, err, "no end has a flow, expected one or more above 0")
}

// TestGrilleInTheSideOfATrunk is an end along a run's way.
func TestGrilleInTheSideOfATrunk(t *testing.T) {
	runs := []Run{pipe(t, "near", "unit", "hall", 0.15, 4), pipe(t, "far", "hall", "room", 0.125, 4)}
	grille := []StatedLoss{{"grille", 10, 0.02, 2}}
	s := newSystem(t, runs, []End{{"hall", grille}, {"room", grille}})
	loss, err := s.Design(Flows{"hall": 0.02, "room": 0.02})
	require.NoError(t, err)
	assert.Equal(t, "room", loss.Outlet.Critical)
	assert.InDelta(t, 0.04, float64(loss.Outlet.Runs[0].Flow), 1e-12)
	assert.Equal(t, []string{"near"}, endOf(t, loss, "hall").Path)
	open, err := s.Open(0.04)
	require.NoError(t, err)
	assert.Greater(t, endOf(t, open, "hall").Flow, endOf(t, open, "room").Flow)
}

// TestLossesOfARunAddUp: those of its sections and of each stated one, at an end too.
func TestLossesOfARunAddUp(t *testing.T) {
	wide, narrow := pipe(t, "", "", "", 0.15, 3).Sections[0], pipe(t, "", "", "", 0.1, 2).Sections[0]
	stated := []StatedLoss{{"filter", 10, 0.02, 1}, {"coil", 7, 0.02, 2}}
	s := newSystem(t, []Run{{ID: "a", From: "unit", To: "x", Sections: []Section{wide, narrow}, Losses: stated}}, []End{{"x", stated}})
	loss, err := s.Design(Flows{"x": 0.02})
	require.NoError(t, err)
	ducts := lossOf(t, StandardAir(), wide, 0.02).Total + lossOf(t, StandardAir(), narrow, 0.02).Total
	run, _ := loss.Run("a")
	assert.InDelta(t, float64(ducts+10+7), float64(run.Loss), 1e-12)
	assert.InDelta(t, 10+7, float64(endOf(t, loss, "x").Loss), 1e-12)
	assert.InDelta(t, float64(ducts+2*(10+7)), float64(loss.Pressure), 1e-12)
	d, err := s.damped(Flows{"x": 0.02})
	require.NoError(t, err)
	needed, err := d.pressure(0.02)
	require.NoError(t, err)
	assert.InDelta(t, float64(loss.Pressure), needed, 1e-12, "what a fan curve is held against")
}

// TestTheFirstOfEqualPathsIsCritical: the choice does not depend on rounding.
func TestTheFirstOfEqualPathsIsCritical(t *testing.T) {
	s := newSystem(t, []Run{pipe(t, "a", "unit", "x", 0.1, 3), pipe(t, "b", "unit", "y", 0.1, 3)}, []End{{ID: "x"}, {ID: "y"}})
	loss, err := s.Design(Flows{"x": 0.02, "y": 0.02})
	require.NoError(t, err)
	assert.Equal(t, "x", loss.Outlet.Critical)
	assert.Zero(t, endOf(t, loss, "y").Damper)
}

func TestDampedKeepsProportions(t *testing.T) {
	s := newSystem(t, first(house(t)), second(house(t)))
	design, err := s.Design(houseFlows)
	require.NoError(t, err)
	same, err := s.Damped(houseFlows, design.Flow)
	require.NoError(t, err)
	assert.InDelta(t, float64(design.Pressure), float64(same.Pressure), 1e-9)
	half, err := s.Damped(houseFlows, design.Flow/2)
	require.NoError(t, err)
	assert.InDelta(t, 0.006, float64(endOf(t, half, "bed-1").Flow), 1e-12)
	assert.Less(t, half.Pressure, design.Pressure/2)
	_, err = s.Damped(houseFlows, -1)
	assert.ErrorContains(t, err, "total flow")
	_, err = s.Damped(Flows{}, 0.1)
	assert.Error(t, err)
}

func TestVelocityOutsideItsRangeNamesTheRun(t *testing.T) {
	s := newSystem(t, first(house(t)), second(house(t)))
	_, err := s.Design(Flows{"bed-1": 1, "bed-2": 0.001, "living": 0.001})
	assert.ErrorContains(t, err, `run "first", section 1: velocity "127.32 m/s" is out of range`)
	_, err = s.Open(3)
	assert.ErrorContains(t, err, `run "fresh", section 1: velocity`)
	_, err = s.Open(-1)
	assert.ErrorContains(t, err, "total flow")
}
