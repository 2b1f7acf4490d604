package schema

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/cmd/ventlint/config"
)

// asJSON turns TOML into what a schema looks at; ok is false for what JSON cannot
// hold, and for what is no TOML.
func asJSON(source []byte) (value any, ok bool) {
	var document map[string]any
	if _, err := toml.Decode(string(source), &document); err != nil {
		return nil, false
	}
	text, err := json.Marshal(document)
	if err != nil {
		return nil, false
	}
	value, err = jsonschema.UnmarshalJSON(bytes.NewReader(text))
	return value, err == nil
}

func matching(t *testing.T, patterns ...string) []string {
	t.Helper()
	var list []string
	for _, pattern := range patterns {
		names, err := filepath.Glob("../../" + pattern)
		require.NoError(t, err)
		require.NotEmpty(t, names, pattern)
		list = append(list, names...)
	}
	return list
}

var shipped = map[string][]string{
	"design": {"testdata/designs/[^e]*/*.vent.toml", "checker/design/testdata/every-key.vent.toml", "cmd/ventlint/starter.vent.toml", "cmd/ventlint/testdata/story/[^b]*.vent.toml"},
	"pack":   {"rules/packs/*.rules.toml", "testdata/packs/*.rules.toml", "cmd/ventlint/starter.rules.toml", "cmd/ventlint/testdata/story/*.rules.toml"},
	"config": {"testdata/configs/*.toml"},
}

func TestShippedFilesConform(t *testing.T) {
	for name, patterns := range shipped {
		schema := compiled(t, name)
		for _, file := range matching(t, patterns...) {
			source, err := os.ReadFile(file)
			require.NoError(t, err)
			value, ok := asJSON(source)
			require.True(t, ok, file)
			require.NoError(t, schema.Validate(value), file)
		}
	}
}

// What is copied elsewhere, starters and stories, names no schema: a relative path
// would lead nowhere.
func TestShippedFilesNameTheirSchema(t *testing.T) {
	for name, patterns := range shipped {
		for _, file := range matching(t, patterns...) {
			if strings.Contains(file, "cmd/ventlint/") {
				continue
			}
			folder, err := filepath.Abs(filepath.Dir(file))
			require.NoError(t, err)
			target, err := filepath.Abs(name + suffix)
			require.NoError(t, err)
			way, err := filepath.Rel(folder, target)
			require.NoError(t, err)
			first, _, _ := strings.Cut(read(t, file), "\n")
			require.Equal(t, "#:schema "+filepath.ToSlash(way), first, "the first line of %s", file)
		}
	}
}

// The mistakes of these designs are in what their parts say together, or in
// figures, which no schema can tell.
var beyondSchemas = map[string]bool{
	"combination-fitting": true, "dangling-reference": true, "duct-circle": true, "fan-curve": true,
	"footprint-clockwise": true, "footprint-crossing": true, "footprint-open": true, "off-the-wall": true, "outline": true,
	"point-with-size": true, "round-and-rectangular": true, "two-places": true, "wall-without-length": true, "negative-value": true,
	"running-time": true, "electric-vent": true, "measured-twice": true,
}

func TestMalformedDesignsAreRefused(t *testing.T) {
	refusals := 0
	schema := compiled(t, "design")
	for _, file := range matching(t, "testdata/designs/err/*.vent.toml") {
		source, err := os.ReadFile(file)
		require.NoError(t, err)
		value, ok := asJSON(source)
		if !ok {
			continue // no TOML: nothing that a schema sees
		}
		name := strings.TrimSuffix(filepath.Base(file), ".vent.toml")
		refused := schema.Validate(value) != nil
		require.Equal(t, !beyondSchemas[name], refused, name)
		if refused {
			refusals++
		}
	}
	require.Greater(t, refusals, 8)
}

// Each change of a sound file is a mistake that a loader and a schema both refuse.
func TestMistakesAreRefused(t *testing.T) {
	house := read(t, "../../testdata/designs/ok/alder-court.vent.toml")
	pack := read(t, "../../testdata/packs/harbor-county.rules.toml")
	for _, c := range []struct{ name, source, from, to string }{
		{"design", house, `stage = "permit"`, `stage = "permitt"`},
		{"design", house, `[dwelling]`, `[dwellling]`},
		{"design", house, `kind = "intake"`, `kind = "inlet"`},
		{"design", house, `format = 1`, `format = "1"`},
		{"design", house, `kind = "intake"`, ``},
		{"pack", pack, `units = "IP"`, `units = "metric"`},
		{"pack", pack, `read = "seen"`, `read = "sometimes"`},
		{"pack", pack, `[[rule]]`, `[[rules]]`},
	} {
		require.Contains(t, c.source, c.from)
		value, ok := asJSON([]byte(strings.Replace(c.source, c.from, c.to, 1)))
		require.True(t, ok, c.to)
		require.Error(t, compiled(t, c.name).Validate(value), c.to)
	}
}

func read(t *testing.T, file string) string {
	t.Helper()
	source, err := os.ReadFile(file)
	require.NoError(t, err)
	return string(source)
}

// What a configuration may say, loader and schema say alike.
func TestConfigurations(t *testing.T) {
	schema := compiled(t, "config")
	for source, sound := range map[string]bool{
		``: true, `designs = ["designs/**"]`: true, `designs = []`: false, `designs = [" "]`: false, `designs = ["a\\b"]`: false,
		`pack = ["irc-2021@sha256:0123456789ab"]`: true, `pack = ["irc 2021"]`: false, `pack = ["../a b.rules.toml"]`: true,
		`output = ["sarif=a b.sarif"]`: true, `output = ["sarif="]`: false, `output = ["xml=a"]`: false, `format = "html"`: true,
		`fail-on = "note"`: true, `fail_on = "note"`: false, `baseline = " "`: false, `fail-on-new = 1`: false, `color = "never"`: true,
	} {
		value, ok := asJSON([]byte(source))
		require.True(t, ok, source)
		require.Equal(t, sound, schema.Validate(value) == nil, source)
		_, problems := config.Load("ventlint.toml", []byte(source))
		require.Equal(t, sound, len(problems) == 0, source)
	}
}

// The design that gives every key does so in the schema too: no key is forgotten.
func TestEveryKeyIsKnown(t *testing.T) {
	source := []byte(read(t, "../../checker/design/testdata/every-key.vent.toml"))
	_, problems := design.Load("every-key", source)
	require.Empty(t, problems)
	value, _ := asJSON(source)
	require.NoError(t, compiled(t, "design").Validate(value))
}
