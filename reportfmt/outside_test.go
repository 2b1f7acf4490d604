package reportfmt

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
)

// These tests have programs from outside judge the golden files. They run where
// the programs are, and say what is missing where they are not:
//
//	VENTLINT_SARIF_SCHEMA     the standard's sarif-schema-2.1.0.json (Errata 01)
//	VENTLINT_SARIF_VALIDATOR  the program Sarif.Multitool of the npm package
//	                          @microsoft/sarif-multitool; else npx is asked for it
//	VENTLINT_JUNIT_SCHEMA     an XML schema of reports of tests, such as
//	                          junit-10.xsd of the Jenkins plugin xunit
//
// and xmllint, of libxml2.

func goldens(t *testing.T, pattern string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("testdata", pattern))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), len(batches()))
	return files
}

func TestSARIFBySchemaOfTheStandard(t *testing.T) {
	path := os.Getenv("VENTLINT_SARIF_SCHEMA")
	if path == "" {
		t.Skip("VENTLINT_SARIF_SCHEMA names no schema")
	}
	source, err := os.ReadFile(path)
	require.NoError(t, err)
	schema := instance(t, string(bytes.TrimPrefix(source, []byte("\ufeff"))))
	compiler := jsonschema.NewCompiler()
	compiler.AssertFormat()
	require.NoError(t, compiler.AddResource("sarif.json", schema))
	compiled, err := compiler.Compile("sarif.json")
	require.NoError(t, err)
	for _, file := range goldens(t, "*.sarif") {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		require.NoError(t, compiled.Validate(instance(t, string(text))), file)
	}
}

// sarifValidator is the command that validates, without its arguments.
func sarifValidator(t *testing.T) []string {
	t.Helper()
	if testing.Short() {
		t.Skip("takes half a minute")
	}
	if path := os.Getenv("VENTLINT_SARIF_VALIDATOR"); path != "" {
		return []string{path}
	}
	npx, err := exec.LookPath("npx")
	if err != nil {
		t.Skip("VENTLINT_SARIF_VALIDATOR names no program, and there is no npx")
	}
	command := []string{npx, "--no-install", "sarif-multitool"}
	if err := exec.Command(command[0], append(command[1:], "version")...).Run(); err != nil {
		t.Skip("VENTLINT_SARIF_VALIDATOR names no program, and npx has no sarif-multitool")
	}
	return command
}

// The validator's notes advise what a log may do besides; its errors and warnings
// say what is wrong.
func TestSARIFByAValidator(t *testing.T) {
	command := sarifValidator(t)
	result := filepath.Join(t.TempDir(), "result.sarif")
	args := append(command[1:], "validate", "--output", result)
	out, err := exec.Command(command[0], append(args, goldens(t, "*.sarif")...)...).CombinedOutput()
	require.NoError(t, err, string(out))
	source, err := os.ReadFile(result)
	require.NoError(t, err, string(out))
	var found struct {
		Runs []struct{ Results []sarifResult }
	}
	require.NoError(t, json.Unmarshal(bytes.TrimPrefix(source, []byte("\ufeff")), &found))
	require.Len(t, found.Runs, 1)
	for _, r := range found.Runs[0].Results {
		require.Equal(t, "note", r.Level, "%s: %s", r.RuleID, r.Message.Text)
	}
}

func TestJUnitByXmllint(t *testing.T) {
	lint, err := exec.LookPath("xmllint")
	if err != nil {
		t.Skip("there is no xmllint")
	}
	args := []string{"--noout", "--nonet"}
	if schema := os.Getenv("VENTLINT_JUNIT_SCHEMA"); schema != "" {
		args = append(args, "--schema", schema)
	}
	out, err := exec.Command(lint, append(args, goldens(t, "*.xml")...)...).CombinedOutput()
	require.NoError(t, err, string(out))
}
