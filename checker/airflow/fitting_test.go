package airflow

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func fittingNamed(t testing.TB, format string, args ...any) KnownFitting {
	t.Helper()
	k, err := FittingNamed(fmt.Sprintf(format, args...))
	require.NoError(t, err)
	return k
}

func TestNamesOfFittingsInAnyOrder(t *testing.T) {
	for _, name := range []string{"smooth elbow 90, r/D 1.5", "Elbow, smooth, 90 degrees, R/D = 1.50", "90deg smooth bend r/d1.5", "elbow 90° smooth (r/D 1.5)"} {
		k, err := FittingNamed(name)
		require.NoError(t, err, name)
		assert.Equal(t, 0.15, k.Coefficient)
		assert.Equal(t, "smooth elbow 90, r/D 1.5", k.Name)
	}
	assert.Equal(t, "mitered elbow 45", fittingNamed(t, "Mitred 45-degree elbow").Name)
	assert.Equal(t, "gored elbow 90, 4 pieces, r/D 1", fittingNamed(t, "4-piece gored elbow, 90, r/D 1.0").Name)
}

func TestFittingsThatTheTableLacks(t *testing.T) {
	_, err := FittingNamed("elbow, smooth, 90 degrees")
	var unknown *UnknownFitting
	require.ErrorAs(t, err, &unknown)
	assert.Equal(t, "smooth elbow 90, r/D 0.5", unknown.Near[0])
	assert.Len(t, unknown.Near, mostNear)
	assert.ErrorContains(t, err, `fitting "elbow, smooth, 90 degrees" has no known loss, expected its loss coefficient or equivalent length, or a name such as "smooth elbow 90, r/D 0.5", `)

	_, err = FittingNamed("miterd elbw 45 x")
	require.ErrorAs(t, err, &unknown)
	assert.Equal(t, "mitered elbow 45", unknown.Near[0], "misspelled words count as the nearest")

	for _, name := range []string{"", "outlet of the distribution box", "90", "\xff\xfe", strings.Repeat("é", 5000)} {
		_, err = FittingNamed(name)
		require.ErrorAs(t, err, &unknown)
		assert.Empty(t, unknown.Near, name)
		assert.ErrorContains(t, err, "expected its loss coefficient or equivalent length")
		assert.NotContains(t, err.Error(), "such as")
	}
}

// TestNumbersOfFittingsAreNotMisspelled: 46 is not a slip for 45 or 4, and 0 and 9
// are no angles of the table.
func TestNumbersOfFittingsAreNotMisspelled(t *testing.T) {
	var unknown *UnknownFitting
	_, err := FittingNamed("elbow 46")
	require.ErrorAs(t, err, &unknown)
	assert.Equal(t, "mitered elbow 90", unknown.Near[0], "the shortest name with an elbow")
	for _, angle := range []string{"0", "9"} {
		_, err = FittingNamed("smooth elbow " + angle + ", r/D 1.5")
		assert.ErrorAs(t, err, &unknown, angle)
	}
}

// TestRemarksOfSmoothElbows: newer data are known for one radius.
func TestRemarksOfSmoothElbows(t *testing.T) {
	for _, k := range smoothElbows() {
		assert.Equal(t, strings.HasSuffix(k.Name, "r/D 1.5"), k.Remark != "", k.Name)
	}
}

func TestEachKnownFittingIsWhole(t *testing.T) {
	known := KnownFittings()
	require.Len(t, known, len(knownFittings()))
	names := map[string]string{}
	for _, k := range known {
		assert.Positive(t, k.Coefficient, k.Name)
		assert.Contains(t, []Provenance{Seen, Memory, Practice}, k.Provenance, k.Name)
		assert.NotEmpty(t, k.Source, k.Name)
		words := strings.Join(wordsOf(k.Name), " ")
		assert.Empty(t, names[words], "%q has the words of another", k.Name)
		names[words] = k.Name
		found, err := FittingNamed(k.Name)
		require.NoError(t, err)
		assert.Equal(t, k, found)
		assert.Equal(t, Fitting{Name: k.Name, Count: 3, Coefficient: k.Coefficient, Miter: k.Miter}, k.Times(3))
	}
}

// TestTablesOfElbowsHaveTheirShape: more turn and a tighter bend never lose less.
func TestTablesOfElbowsHaveTheirShape(t *testing.T) {
	angles := []float64{20, 30, 45, 60, 75, 90, 110, 130, 150, 180}
	radii := []float64{2.5, 2, 1.5, 1, 0.75, 0.5}
	for i, angle := range angles {
		for j, r := range radii {
			c := fittingNamed(t, "smooth elbow %v, r/D %v", angle, r).Coefficient
			if i > 0 {
				assert.Greater(t, c, fittingNamed(t, "smooth elbow %v, r/D %v", angles[i-1], r).Coefficient)
			}
			if j > 0 {
				assert.Greater(t, c, fittingNamed(t, "smooth elbow %v, r/D %v", angle, radii[j-1]).Coefficient)
			}
		}
	}
	for _, r := range []float64{0.75, 1, 1.5, 2} {
		three, four, five := fittingNamed(t, "gored elbow 90, 3 pieces, r/D %v", r), fittingNamed(t, "gored elbow 90, 4 pieces, r/D %v", r), fittingNamed(t, "gored elbow 90, 5 pieces, r/D %v", r)
		assert.True(t, three.Coefficient > four.Coefficient && four.Coefficient > five.Coefficient, r)
	}
	// SMACNA prints 0.13 for 45 degrees at r/D 1 in an example; 0.60 x 0.22.
	assert.InDelta(t, 0.13, fittingNamed(t, "smooth elbow 45, r/D 1").Coefficient, 0.005)
}

// TestMiterFactor holds the published points, SMACNA table A-7 C note 2.
func TestMiterFactor(t *testing.T) {
	for re, want := range map[float64]float64{1: 1.40, 1e4: 1.40, 2e4: 1.26, 2.5e4: 1.225, 3e4: 1.19, 4e4: 1.14, 6e4: 1.09, 8e4: 1.06, 1e5: 1.04, 1.4e5: 1, 1e7: 1} {
		assert.InDelta(t, want, MiterFactor(re), 1e-12, re)
	}
	assert.Equal(t, 1.40, MiterFactor(math.NaN()))
	before := 0.0
	for re := 100.0; re < 1e6; re *= 1.01 {
		loss := MiterFactor(re) * re * re
		require.Greater(t, loss, before)
		before = loss
	}
	s := Section{Shape: round(t, 0.1), Fittings: []Fitting{fittingNamed(t, "mitered elbow 90").Times(2)}}
	loss := lossOf(t, StandardAir(), s, 0.024)
	assert.InDelta(t, 2*1.2*MiterFactor(loss.Reynolds), loss.Coefficient, 1e-12)
	assert.InEpsilon(t, float64(loss.Total), float64(loss.Fittings[0].Loss), 1e-12)
}

func TestMaterials(t *testing.T) {
	for _, m := range Materials() {
		found, err := MaterialNamed(m.Name)
		require.NoError(t, err)
		assert.Equal(t, m, found)
		assert.Positive(t, m.Roughness)
		assert.LessOrEqual(t, m.Least, m.Most)
		assert.LessOrEqual(t, m.Most, 10*mm, "rougher than a section takes")
		assert.Equal(t, m.Provenance == Practice, m.Source == "", m.Name)
		assert.Equal(t, m.Name == "flexible", m.Compressible)
	}
	_, err := MaterialNamed("galvanised-steel")
	assert.EqualError(t, err, `material "galvanised-steel" has no known roughness, expected one such as "galvanized-steel"`)
	_, err = MaterialNamed("straw")
	assert.ErrorContains(t, err, `expected one of "galvanized-steel", "stainless-steel"`)
}

func TestCompressionOutsideItsRange(t *testing.T) {
	_, err := CompressionFactor(0.15, 0.5)
	assert.ErrorContains(t, err, `compression of flexible duct "50 %" is out of range, expected 0 % to 45 %`)
	_, err = CompressionFactor(0, 0.1)
	assert.Error(t, err)
	for diameter, extrapolated := range map[q.Length]bool{5.9 * inch: true, 6 * inch: false, 8 * inch: false, 10 * inch: false, 10.1 * inch: true} {
		c, err := CompressionFactor(diameter, 0.1)
		require.NoError(t, err)
		assert.Equal(t, extrapolated, c.Extrapolated, diameter)
	}
	none, err := CompressionFactor(0.1, 0)
	require.NoError(t, err)
	assert.Equal(t, Compressed{1, false}, none)
	assert.Equal(t, q.Ratio(0.15), AssumedCompression)
}
