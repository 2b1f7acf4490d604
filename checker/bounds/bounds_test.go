package bounds

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestCheckAllowsBothEndsAndTheirTolerance(t *testing.T) {
	for _, v := range []q.Ratio{0, 0.5, 1, 1 + 1e-10, -1e-13} {
		assert.NoError(t, Check("share", v, 0, 1))
	}
}

func TestCheckRefusesWhatLiesOutside(t *testing.T) {
	for _, v := range []q.Ratio{-0.001, 1.001, q.Ratio(math.NaN()), q.Ratio(math.Inf(1)), q.Ratio(math.Inf(-1))} {
		var out *Error
		require.ErrorAs(t, Check("share", v, 0, 1), &out)
		assert.Equal(t, "share", out.What)
		assert.Equal(t, q.Ratio(1), out.High)
	}
}

func TestMessageNamesValueAndRange(t *testing.T) {
	assert.EqualError(t, Check("indoor temperature", q.Temperature(373.15), 203.15, 333.15),
		`indoor temperature "100 C" is out of range, expected -70 C to 60 C`)
	assert.EqualError(t, Check("exponent", 0.4, 0.5, 1.0),
		`exponent "0.4" is out of range, expected 0.5 to 1`)
}

func TestClamp(t *testing.T) {
	assert.Equal(t, 1.0, Clamp(1+1e-10, 0.0, 1))
	assert.Equal(t, 0.0, Clamp(-1e-13, 0.0, 1))
	assert.Equal(t, 0.5, Clamp(0.5, 0.0, 1))
}
