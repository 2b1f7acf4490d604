package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design/designtest"
)

// houses is the command "houses NUMBER FOLDER": writes invented designs.
func houses(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: houses NUMBER FOLDER")
	}
	n, err := strconv.Atoi(args[0])
	ts.Check(err)
	ts.Check(writeHouses(ts.MkAbs(args[1]), n))
}

// readme is the command "readme LANGUAGE FILE": writes the block of the README in a
// language that runs impact in parts.
func readme(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: readme LANGUAGE FILE")
	}
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	ts.Check(err)
	for i, block := range strings.Split(string(text), "\n```") {
		language, lines, _ := strings.Cut(block, "\n")
		if i%2 == 1 && language == args[0] && (strings.Contains(lines, "--part ") || strings.Contains(lines, "--merge ")) {
			ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(lines+"\n"), 0o644))
			return
		}
	}
	ts.Fatalf("the README has no block in %q that runs impact in parts", args[0])
}

func writeHouses(folder string, n int) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for seed := range n {
		path := filepath.Join(folder, fmt.Sprintf("house-%03d%s", seed, designSuffix))
		if err := os.WriteFile(path, []byte(designtest.House(uint64(seed))), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// impactOf compares two shipped packs over some houses in a folder of its own.
func impactOf(t *testing.T, watched bool, args ...string) ran {
	t.Helper()
	var stdout, stderr bytes.Buffer
	code := run(append([]string{"impact"}, args...), machine{stdin: strings.NewReader(""), stdout: &stdout, stderr: &stderr, watched: watched})
	return ran{code, stdout.String(), stderr.String()}
}

func someHouses(t *testing.T, n int) {
	t.Helper()
	folder := t.TempDir()
	require.NoError(t, writeHouses(filepath.Join(folder, "designs"), n))
	t.Chdir(folder)
}

// Progress is told only where a terminal watches, and never beside the report.
func TestProgress(t *testing.T) {
	someHouses(t, 3)
	quiet := impactOf(t, false, "--from", "irc-2021", "--to", "irc-2024", "designs")
	assert.Equal(t, clean, quiet.code)
	assert.Empty(t, quiet.stderr)
	watched := impactOf(t, true, "--from", "irc-2021", "--to", "irc-2024", "designs")
	assert.Equal(t, quiet.stdout, watched.stdout)
	assert.Contains(t, watched.stderr, "] 3 of 3 designs")
	assert.True(t, strings.HasSuffix(watched.stderr, "\r"), "an empty line is left behind")
}

// The same designs give the same bytes, in every form, also when the order of the
// paths differs.
func TestImpactIsStable(t *testing.T) {
	someHouses(t, 12)
	for _, format := range []string{"text", "json", "csv"} {
		args := []string{"--from", "irc-2021", "--to", "practice", "--format", format}
		first := impactOf(t, false, append(args, "designs")...)
		assert.Equal(t, clean, first.code, first.stderr)
		again := impactOf(t, false, append(args, "designs/house-007.vent.toml", "designs", "designs/house-001.vent.toml")...)
		assert.Equal(t, first.stdout, again.stdout, format)
	}
}

// A name cannot steer a terminal, nor make a spreadsheet compute.
func TestImpactOfHostileNames(t *testing.T) {
	someHouses(t, 0)
	name := "=1+1 \x1b[31m\".vent.toml"
	require.NoError(t, os.WriteFile(name, []byte(designtest.House(3)), 0o644))
	require.NoError(t, os.WriteFile("@broken.vent.toml", []byte("format = \"\x1b\""), 0o644))
	for _, format := range []string{"text", "csv", "json"} {
		got := impactOf(t, false, "--from", "irc-2021", "--to", "irc-2024", "--format", format, name, "@broken.vent.toml")
		assert.Equal(t, couldNot, got.code)
		assert.NotContains(t, got.stdout, "\x1b", format)
		assert.Equal(t, "ventlint: 1 of 2 designs could not be judged\n", got.stderr)
		if format == "csv" {
			assert.Contains(t, got.stdout, `"not judged","'@broken.vent.toml"`)
			assert.NotContains(t, got.stdout, `"=1`)
		}
	}
}
