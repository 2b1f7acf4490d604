package documenttest

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A Published folder holds facts from outside the project, as TOML files.
type Published string

// Read decodes one file, named without ending. Every key must be used, but those
// that tell where a fact is from.
func (p Published) Read(t testing.TB, name string, into any) {
	t.Helper()
	meta, err := toml.DecodeFile(filepath.Join(string(p), name+".toml"), into)
	require.NoError(t, err)
	for _, k := range meta.Undecoded() {
		switch last := k[len(k)-1]; last {
		case "source", "document", "section", "address", "read", "remark", "id":
		default:
			assert.Equal(t, "source", k[0], "key %s of %s is not checked", k, name)
		}
	}
}

var sourced = regexp.MustCompile(`(?s)document = ".*read = "|^#[^\n]* Written by \w+\.(py|js)`)

// NameTheirSource holds that no figure comes without a document and how it was
// read, or without the script that wrote it.
func (p Published) NameTheirSource(t testing.TB) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(string(p), "*.toml"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		assert.True(t, sourced.Match(text), "%s names no source", f)
	}
}
