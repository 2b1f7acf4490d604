package quantity

import (
	"reflect"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestUnmarshalTOML(t *testing.T) {
	var flow Flow
	require.NoError(t, flow.UnmarshalTOML("100 L/s"))
	assert.Equal(t, Flow(0.1), flow)
	for value, want := range map[any]string{
		int64(80):        `80 needs a unit, expected a flow such as "80 cfm"`,
		80.5:             `80.5 needs a unit, expected a flow such as "80 cfm"`,
		true:             `true is not a quantity, expected a flow such as "80 cfm"`,
		"12 ft":          `"12 ft" is a length, expected a flow such as "80 cfm"`,
		time.Duration(0): `0s is not a quantity, expected a flow such as "80 cfm"`,
	} {
		assert.EqualError(t, flow.UnmarshalTOML(value), want)
	}
	assert.EqualError(t, flow.UnmarshalTOML([]any{"80 cfm"}), `a list is not a quantity, expected a flow such as "80 cfm"`)
	assert.EqualError(t, flow.UnmarshalTOML(map[string]any{}), `a table is not a quantity, expected a flow such as "80 cfm"`)
	assert.Equal(t, Flow(0.1), flow, "a mistake leaves the value alone")
}

// TestEveryTypeReadsItself decodes a document with one key for each type.
func TestEveryTypeReadsItself(t *testing.T) {
	for _, k := range kinds {
		into := reflect.New(k.typ)
		unmarshaler, ok := into.Interface().(toml.Unmarshaler)
		require.True(t, ok, k.name)
		require.NoError(t, unmarshaler.UnmarshalTOML(k.example))
		assert.NotZero(t, into.Elem().Float(), k.name)
		assert.Equal(t, Format(into.Elem().Interface(), SI), into.Elem().Interface().(interface{ String() string }).String())
		assert.ErrorContains(t, unmarshaler.UnmarshalTOML(int64(1)), "1 needs a unit, expected "+Describe(k.typ))
	}
}
