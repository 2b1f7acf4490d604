package quantity

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestUnits(t *testing.T) {
	seen := map[string]bool{}
	for _, u := range Units() {
		assert.False(t, seen[u.Symbol], "%q twice", u.Symbol)
		seen[u.Symbol] = true
		assert.Positive(t, u.Scale)
		v, err := Parse("7 " + u.Symbol)
		require.NoError(t, err)
		assert.Equal(t, u.Type, reflect.TypeOf(v), u.Symbol)
		si, _ := size(v)
		assert.Equal(t, float64(7*u.Scale)+u.Offset, si, u.Symbol)
	}
	for _, symbol := range []string{"ft", "in", "cfm", "L/s per m2", "in. w.c.", "°F", "%", "R", "m²", "1/h", "dBA"} {
		assert.True(t, seen[symbol], symbol)
	}
}

func TestUnitsIsACopy(t *testing.T) {
	Units()[0].Scale = 99
	assert.Equal(t, foot, Units()[0].Scale)
}

func TestNames(t *testing.T) {
	for _, c := range []struct {
		t                       reflect.Type
		name, example, describe string
	}{
		{reflect.TypeFor[Length](), "length", "12 ft 4 in", `a length such as "12 ft 4 in"`},
		{reflect.TypeFor[AirChange](), "air change rate", "3 ACH", `an air change rate such as "3 ACH"`},
		{reflect.TypeFor[float64](), "number", "", "a number"},
		{reflect.TypeFor[int](), "number", "", "a number"},
		{reflect.TypeFor[string](), "text", "", "a text"},
		{reflect.TypeFor[bool](), "yes-or-no", "", "a yes-or-no"},
		{reflect.TypeFor[[]int](), "[]int", "", "a []int"},
		{nil, "nothing", "", "nothing"},
	} {
		assert.Equal(t, c.name, NameOf(c.t))
		assert.Equal(t, c.example, ExampleOf(c.t))
		assert.Equal(t, c.describe, Describe(c.t))
	}
}

func TestSystemString(t *testing.T) {
	assert.Equal(t, "IP", IP.String())
	assert.Equal(t, "SI", SI.String())
}

// A unit is found by each of its spellings, and by nothing else.
func TestUnitOf(t *testing.T) {
	for _, u := range Units() {
		found, ok := UnitOf(u.Symbol)
		assert.True(t, ok, u.Symbol)
		assert.Equal(t, u, found)
	}
	for _, symbol := range []string{"", "furlong", "FT"} {
		_, ok := UnitOf(symbol)
		assert.False(t, ok, symbol)
	}
}
