package moistair

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestRunRefusesWhatLiesOutside(t *testing.T) {
	good := even(air(t, -5, 0.6), air(t, 21, 0.3))
	for what, spoil := range map[string]func(c *Core, o *Operation){
		"sensible effectiveness":     func(c *Core, o *Operation) { c.Sensible = 1.01 },
		"latent effectiveness":       func(c *Core, o *Operation) { c.Latent = -0.1 },
		"exhaust air transfer ratio": func(c *Core, o *Operation) { c.Transfer = q.Ratio(math.NaN()) },
		"outdoor air is not given":   func(c *Core, o *Operation) { o.Outdoor = State{} },
		"indoor air is not given":    func(c *Core, o *Operation) { o.Indoor = State{} },
		"supply mass flow":           func(c *Core, o *Operation) { o.Supply = 0 },
		"extract mass flow":          func(c *Core, o *Operation) { o.Extract = MassFlow(math.Inf(1)) },
		"supply fan power":           func(c *Core, o *Operation) { o.SupplyFan = -1 },
		"exhaust fan power":          func(c *Core, o *Operation) { o.ExhaustFan = 1e6 },
		"expected one place":         func(c *Core, o *Operation) { o.Indoor.pressure = 90_000 },
		"supply air: dry bulb":       func(c *Core, o *Operation) { o.SupplyFan = 50_000 },
		"exhaust air: dry bulb":      func(c *Core, o *Operation) { o.ExhaustFan = 50_000 },
	} {
		c, o := Core{Sensible: 0.7}, good
		spoil(&c, &o)
		x, err := c.Run(o)
		assert.ErrorContains(t, err, what)
		assert.Equal(t, Exchange{}, x)
	}
}

// TestMixtureBeyondTheRange: warm dry air and cold air always stay in range, so
// only a State that this package did not make can leave it.
func TestMixtureBeyondTheRange(t *testing.T) {
	hot := State{float64(celsius(90)), 0.001, float64(ground)}
	_, err := Mix(Stream{hot, 0.1})
	require.ErrorContains(t, err, "mixed air: dry bulb temperature")
}
