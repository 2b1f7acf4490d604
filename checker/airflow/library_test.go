package airflow

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// sheet is one table of losses.toml, which losses.py writes with python3-fluids.
type sheet struct {
	Columns []string
	Rows    [][]float64
}

func library(t testing.TB) map[string]sheet {
	t.Helper()
	var f map[string]sheet
	published.Read(t, "losses", &f)
	require.Len(t, f, 10)
	return f
}

func TestFrictionFactorsOfTheLibrary(t *testing.T) {
	f := library(t)
	require.Len(t, f["colebrook"].Rows, 240)
	for _, r := range f["colebrook"].Rows {
		got, err := FrictionFactor(r[0], r[1])
		require.NoError(t, err)
		assert.InEpsilon(t, r[2], got.Factor, 1e-10, r)
	}
	for _, r := range f["laminar"].Rows {
		got, err := FrictionFactor(r[0], 0.01)
		require.NoError(t, err)
		assert.InEpsilon(t, r[1], got.Factor, 1e-14, r)
	}
}

func TestPressureDropsOfTheLibrary(t *testing.T) {
	rows := library(t)["drop"].Rows
	require.Greater(t, len(rows), 300)
	for _, r := range rows {
		air := Air{moistair.Density(r[0]), Viscosity(r[1])}
		s := Section{Shape: round(t, q.Length(r[2])), Material: rough(q.Length(r[4])), Length: 10}
		assert.InEpsilon(t, r[5], float64(lossOf(t, air, s, q.Flow(r[3])).Total), 1e-8, r)
		flow, err := s.Flow(air, q.Pressure(r[5]))
		require.NoError(t, err)
		assert.InEpsilon(t, r[3], float64(flow), 1e-8, "inverse of %v", r)
	}
}

func TestFittingLossesOfTheLibrary(t *testing.T) {
	shape := round(t, 0.15)
	for _, r := range library(t)["fitting"].Rows {
		s := Section{Shape: shape, Fittings: []Fitting{{Name: "any", Count: 1, Coefficient: r[0]}}}
		flow := q.Flow(r[1]) * q.Flow(shape.Area())
		assert.InDelta(t, r[3], float64(lossOf(t, StandardAir(), s, flow).Total), 1e-9*r[3], r)
	}
}

// TestEquivalentLengths holds that a fitting by equivalent length and one by the
// coefficient f L/D lose the same.
func TestEquivalentLengths(t *testing.T) {
	for _, r := range library(t)["equivalent"].Rows {
		assert.InEpsilon(t, r[0]*r[1], r[2], 1e-12)
	}
	byLength := Section{Shape: round(t, 0.15), Material: named(t, "pvc"), Fittings: []Fitting{{Name: "tee", Count: 2, EquivalentLength: 0.15 * 30}}}
	loss := lossOf(t, StandardAir(), byLength, 0.05)
	byCoefficient := byLength
	byCoefficient.Fittings = []Fitting{{Name: "tee", Count: 2, Coefficient: 30 * loss.Friction.Factor}}
	assert.InEpsilon(t, float64(lossOf(t, StandardAir(), byCoefficient, 0.05).Total), float64(loss.Total), 1e-12)
}

func TestEnlargementsOfTheLibrary(t *testing.T) {
	for _, r := range library(t)["enlargement"].Rows {
		before, after := round(t, q.Length(r[0])), round(t, q.Length(r[1]))
		c, err := AbruptEnlargement(before, after)
		require.NoError(t, err)
		assert.InDelta(t, r[2], c, 1e-12, r)
		moved, err := Refer(c, before, after)
		require.NoError(t, err)
		assert.InDelta(t, r[3], moved, 1e-9*r[3], r)
		tapered, err := TaperedEnlargement(before, after)
		require.NoError(t, err)
		assert.InDelta(t, 0.15*c, tapered, 1e-12)
	}
}

// TestElbowsAreOfTheLibrarysSize compares the tables with measurements on pipe
// fittings: the same within a third where the bend is of a right angle, within a
// half where not.
func TestElbowsAreOfTheLibrarysSize(t *testing.T) {
	f := library(t)
	for _, r := range f["bend"].Rows {
		within := 0.5
		if r[0] == 90 {
			within = 0.33
		}
		assert.InEpsilon(t, r[2], fittingNamed(t, "smooth elbow %v, r/D %v", r[0], r[1]).Coefficient, within, r)
	}
	for _, r := range f["miter"].Rows {
		assert.InEpsilon(t, r[1], fittingNamed(t, "mitered elbow %v", r[0]).Coefficient, 0.12, r)
	}
	ends := f["end"].Rows[0]
	assert.InDelta(t, ends[0], fittingNamed(t, "flush entry").Coefficient, 0.08)
	assert.Equal(t, ends[1], fittingNamed(t, "open exit").Coefficient)
}
