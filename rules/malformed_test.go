package rules_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document/documenttest"
	"github.com/ventlint/ventlint/rules"
)

var update = flag.Bool("update", false, "write the expected output of malformed packs, and the catalogue, anew")

const malformed = "testdata/packs/err"

// fromRoot reads pack files as the command does in the root of the repository, so
// that messages name them alike.
func fromRoot(t *testing.T) *rules.Library {
	t.Helper()
	t.Chdir("..")
	return rules.NewLibrary(os.ReadFile)
}

// Every malformed or hostile pack has its exact mistakes beside it, all of one
// run, and finding them takes little memory. Parsing the parent takes most.
func TestMalformedPacks(t *testing.T) {
	library := fromRoot(t)
	files, err := filepath.Glob(malformed + "/*.rules.toml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 25)
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".rules.toml"), func(t *testing.T) {
			var err error
			documenttest.AtMost(t, 200, func() { _, err = library.Pack(filepath.ToSlash(file)) })
			var invalid *rules.InvalidPack
			require.ErrorAs(t, err, &invalid)
			for _, p := range invalid.Problems {
				assert.Positive(t, p.Position.Line, p.Message)
				assert.Positive(t, p.Position.Column, p.Message)
			}
			golden := strings.TrimSuffix(file, ".rules.toml") + ".out"
			got := err.Error() + "\n"
			if *update {
				require.NoError(t, os.WriteFile(golden, []byte(got), 0o644))
			}
			want, err := os.ReadFile(golden)
			require.NoError(t, err)
			require.Equal(t, string(want), got)
		})
	}
}
