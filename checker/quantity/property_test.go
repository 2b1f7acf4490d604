package quantity

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sample draws a value of a kind over twelve decades, or a temperature of the
// earth.
func sample(r *rand.Rand, k *kind) float64 {
	if k.typ == temperature {
		return 220 + 120*r.Float64()
	}
	x := math.Pow(10, 12*r.Float64()-6)
	if r.IntN(4) == 0 {
		return -x
	}
	return x
}

// TestParseReadsWhatFormatPrints holds that a printed quantity reads back as
// the same type and as much as its three digits say.
func TestParseReadsWhatFormatPrints(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, k := range kinds {
		for range 2000 {
			x := sample(r, k)
			for _, s := range []System{IP, SI} {
				text := Format(k.wrap(x), s)
				y, got, err := parse(text, k)
				require.NoError(t, err)
				require.Same(t, k, got, text)
				require.InDelta(t, x, y, 0.006*math.Abs(x), "%s of %g", text, x)
			}
		}
	}
}

// TestFormatPairTellsApart holds that two values print differently exactly if
// Compare says that they differ, however little.
func TestFormatPairTellsApart(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for _, k := range append(kinds, &kind{wrap: func(x float64) any { return x }}) {
		for range 2000 {
			x := sample(r, k)
			y := x * (1 + math.Pow(10, -2-9*r.Float64()))
			for _, s := range []System{IP, SI} {
				left, right := FormatPair(k.wrap(x), k.wrap(y), s)
				if Compare(x, y) != 0 {
					require.NotEqual(t, left, right, "%s: %.17g and %.17g", k.name, x, y)
				}
			}
		}
	}
}

// TestFormatKeepsOrder holds that of two values the larger never prints as the
// smaller one of a pair.
func TestFormatKeepsOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for _, k := range kinds {
		for range 500 {
			x, y := sample(r, k), sample(r, k)
			left, right := FormatPair(k.wrap(x), k.wrap(y), IP)
			a, _, errA := parse(left, k)
			b, _, errB := parse(right, k)
			require.NoError(t, errA)
			require.NoError(t, errB)
			assert.Equal(t, Compare(x, y), Compare(a, b), "%s and %s", left, right)
		}
	}
}
