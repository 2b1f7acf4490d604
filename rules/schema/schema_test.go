package schema

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the schemas anew")

func TestSchemasAreThoseOfTheTypes(t *testing.T) {
	for _, name := range Names() {
		var out bytes.Buffer
		encoder := json.NewEncoder(&out)
		encoder.SetEscapeHTML(false)
		encoder.SetIndent("", "  ")
		require.NoError(t, encoder.Encode(generate(t, name)))
		if *update {
			require.NoError(t, os.WriteFile(name+suffix, out.Bytes(), 0o644))
		}
		have, err := os.ReadFile(name + suffix)
		require.NoError(t, err)
		require.Equal(t, out.String(), string(have),
			"rules/schema/%s is not that of the types any more: run \"go test ./rules/schema -update\" and commit what it writes", name+suffix)
	}
}

func TestNamed(t *testing.T) {
	for _, name := range Names() {
		require.True(t, json.Valid(Named(name)), name)
	}
	require.Nil(t, Named("house"))
}

// compiled checks a schema against the metaschema of draft 2020-12.
func compiled(t *testing.T, name string) *jsonschema.Schema {
	t.Helper()
	source, err := os.ReadFile(name + suffix)
	require.NoError(t, err)
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(source))
	require.NoError(t, err)
	compiler := jsonschema.NewCompiler()
	require.NoError(t, compiler.AddResource(address+name+suffix, document))
	schema, err := compiler.Compile(address + name + suffix)
	require.NoError(t, err)
	return schema
}
