package quantity

import (
	"math"
	"reflect"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestConversionsOfGNUUnits checks against the values of GNU units 2.22 in
// testdata/published/units, where the script that makes them stands as well.
func TestConversionsOfGNUUnits(t *testing.T) {
	var published struct {
		Conversion []struct {
			Text, Kind string
			SI         float64
		}
	}
	_, err := toml.DecodeFile("../../testdata/published/units/conversions.toml", &published)
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(published.Conversion), 60)
	seen := map[string]bool{}
	for _, c := range published.Conversion {
		v, err := Parse(c.Text)
		if c.Kind == "slope" {
			v, err = ParseAs[Slope](c.Text)
		}
		require.NoError(t, err)
		assert.Equal(t, c.Kind, NameOf(reflect.TypeOf(v)), c.Text)
		got := reflect.ValueOf(v).Float()
		assert.LessOrEqual(t, math.Abs(got-c.SI), 1e-14*math.Abs(c.SI)+1e-13, "%s: got %.17g, published %.17g", c.Text, got, c.SI)
		seen[c.Kind] = true
	}
	for _, k := range kinds {
		if k.name != "loudness" && k.name != "sound level" { // these have one unit
			assert.True(t, seen[k.name], "no published %s", k.name)
		}
	}
}

// TestPrintedFactors checks against factors as tables print them, to the digits
// printed: NIST Special Publication 811 (2008), Appendix B.8 (from memory), and
// the notes to the ventilation tables of IRC chapter 15, 1 cfm = 0.0004719 m3/s and
// 1 ft2 = 0.0929 m2.
func TestPrintedFactors(t *testing.T) {
	for _, c := range []struct {
		text  string
		si    float64
		digit float64 // half of the last digit printed
	}{
		{"1 cfm", 0.0004719, 0.5e-7},
		{"1 ft2", 0.0929, 0.5e-4},
		{"1 ft3", 2.831685e-2, 0.5e-8},
		{"1 psi", 6.894757e3, 0.5e-3},
		{"1 inwc", 2.490889e2, 0.5e-4},
		{"1 Btu/h", 2.930711e-1, 0.5e-7},
		{"1 lb", 4.535924e-1, 0.5e-7},
		{"1 fpm", 5.08e-3, 0.5e-15},
		{"R-1", 1.761102e-1, 0.5e-7},
	} {
		v, err := Parse(c.text)
		require.NoError(t, err)
		assert.InDelta(t, c.si, reflect.ValueOf(v).Float(), c.digit, c.text)
	}
}
