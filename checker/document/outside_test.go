package document

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// An independent parser reads every TOML file of the project alike, to the byte.
func TestAnotherParserReadsEveryFileAlike(t *testing.T) {
	files, places := 0, 0
	require.NoError(t, filepath.WalkDir("../..", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".toml") {
			return err
		}
		source, err := os.ReadFile(path)
		require.NoError(t, err)
		if tree, problems := Parse(path, source); len(problems) == 0 {
			files++
			places += requireAsOracle(t, source, tree)
		}
		return nil
	}))
	t.Logf("places: %d files, %d keys and values", files, places)
	require.Greater(t, files, 100)
	require.Greater(t, places, 10_000)
}

// FuzzPlaces: an independent parser reads whatever the reader takes alike, to the byte.
func FuzzPlaces(f *testing.F) {
	for _, source := range corpus(f) {
		f.Add([]byte(source))
	}
	for _, c := range syntaxCases {
		f.Add([]byte(c.source))
	}
	for _, c := range conflictCases {
		f.Add([]byte(c.source))
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		if tree, problems := Parse("fuzz", source); len(problems) == 0 {
			requireAsOracle(t, source, tree)
		}
	})
}
