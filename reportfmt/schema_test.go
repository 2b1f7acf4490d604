package reportfmt

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
)

// schemaFile is for editors and other programs; it is generated.
var schemaFile = filepath.Join("schema", "report.schema.json")

func TestSchemaIsThatOfTheTypes(t *testing.T) {
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	require.NoError(t, encoder.Encode(schemaOfReports(t)))
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(schemaFile), 0o755))
		require.NoError(t, os.WriteFile(schemaFile, out.Bytes(), 0o644))
	}
	want, err := os.ReadFile(schemaFile)
	require.NoError(t, err)
	require.Equal(t, string(want), out.String())
}

// compiledSchema is checked against the metaschema of draft 2020-12.
func compiledSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	source, err := os.ReadFile(schemaFile)
	require.NoError(t, err)
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(source))
	require.NoError(t, err)
	compiler := jsonschema.NewCompiler()
	require.NoError(t, compiler.AddResource(schemaAddress, document))
	schema, err := compiler.Compile(schemaAddress)
	require.NoError(t, err)
	return schema
}

func instance(t *testing.T, text string) any {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	require.NoError(t, err)
	return v
}

func TestReportsConformToTheSchema(t *testing.T) {
	schema := compiledSchema(t)
	for name, b := range batches() {
		require.NoError(t, schema.Validate(instance(t, written(t, "json", b))), name)
	}
}

func TestSchemaRefusesWhatIsNoReport(t *testing.T) {
	schema := compiledSchema(t)
	sound := written(t, "json", batches()["baseline"])
	for from, to := range map[string]string{
		`"version": 1`:         `"version": 2`,
		`"version": 1,`:        ``,
		`"outcome": "fail"`:    `"outcome": "failed"`,
		`"level": "error"`:     `"level": "fatal"`,
		`"baseline": "new"`:    `"baseline": "old"`,
		`"line": 41`:           `"line": 0`,
		`"stage": "permit"`:    `"stage": "some day"`,
		`"date": "2026-03-14"`: `"date": "14 March"`,
		`"holds": false`:       `"holds": "no"`,
		`"remedy":`:            `"remedies":`,
		`"name": "intake"`:     `"called": "intake"`,
	} {
		require.Contains(t, sound, from)
		require.Error(t, schema.Validate(instance(t, strings.Replace(sound, from, to, 1))), to)
	}
}
