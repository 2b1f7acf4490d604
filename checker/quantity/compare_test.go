package quantity

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCompare(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, c := range []struct {
		a, b float64
		want int
	}{
		{1, 2, -1}, {2, 1, 1}, {2, 2, 0}, {-2, 2, -1}, {0, 0, 0},
		{1, 1 + 0.9e-9, 0}, {1, 1 + 1.1e-9, -1}, {1e6, 1e6 + 0.9e-3, 0}, {1e6, 1e6 + 1.1e-3, -1},
		{-1, -1 - 0.9e-9, 0}, {-1, -1 - 1.1e-9, 1},
		{0, 0.9e-12, 0}, {0, 1e-12, 0}, {0, 1.1e-12, -1}, {0, -1.1e-12, 1}, {-0.6e-12, 0.6e-12, -1},
		{inf, inf, 0}, {-inf, -inf, 0}, {inf, 1e300, 1}, {-inf, -1e300, -1}, {-inf, inf, -1}, {3, inf, -1},
		{nan, nan, 0}, {nan, 1, -1}, {1, nan, 1}, {nan, inf, -1}, {nan, -inf, -1},
		{math.MaxFloat64, -math.MaxFloat64, 1},
	} {
		assert.Equal(t, c.want, Compare(c.a, c.b), "%v with %v", c.a, c.b)
		assert.Equal(t, -c.want, Compare(c.b, c.a), "%v with %v", c.b, c.a)
	}
}

func TestCompareOverUnits(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"10 ft", "3048 mm", 0}, {"10 ft", "120 in", 0},
		{"9 ft 11.9 in", "10 ft", -1}, {"9 ft 11.999 in", "10 ft", -1}, {"3048.1 mm", "10 ft", 1},
		{"36 in", "1 yd", 0}, {"144 in2", "1 ft2", 0}, {"1 cfm", "1.699010796 m3/h", 0},
		{"0.03 cfm/ft2", "0.1524 L/s/m2", 0}, {"0.03 cfm/ft2", "0.15 L/s/m2", 1},
		{"32 F", "0 C", 0}, {"-40 F", "-40 C", 0}, {"70 F", "70.01 F", -1}, {"9 dF", "5 K", 0},
		{"60 min", "1 h", 0}, {"24 h", "1 d", 0}, {"1 kPa", "1000 Pa", 0}, {"1000 Btu/h", "1 kBtu/h", 0},
		{"1 ft 6 in", "1.5 ft", 0}, {"1/3 in", "0.3333333 in", 1},
	} {
		x, errX := Parse(c.a)
		y, errY := Parse(c.b)
		require.NoError(t, errX)
		require.NoError(t, errY)
		a, _ := size(x)
		b, _ := size(y)
		assert.Equal(t, c.want, Compare(a, b), "%s with %s", c.a, c.b)
	}
}

// TestCompareManyEqualPairs takes whole numbers of one unit and as much in
// another. Many of the pairs are different numbers, none may compare so.
func TestCompareManyEqualPairs(t *testing.T) {
	pairs, unlike := 0, 0
	for i := 1; i <= 1000; i++ {
		for _, c := range []struct {
			a, b   string
			factor float64
		}{{"ft", "in", 12}, {"m", "cm", 100}, {"m", "mm", 1000}, {"m3/h", "L/s", 1 / 3.6}} {
			a := unitBySymbol[c.a].si(float64(i))
			b := unitBySymbol[c.b].si(float64(i) * c.factor)
			pairs++
			if a != b {
				unlike++
			}
			require.Zero(t, Compare(a, b), "%d %s", i, c.a)
		}
	}
	assert.Equal(t, 4000, pairs)
	assert.Positive(t, unlike, "without rounding noise this test shows nothing")
}
