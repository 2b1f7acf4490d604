package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A scratch gives back what it took, whether it stayed in memory or not, and leaves
// no file.
func TestScratch(t *testing.T) {
	for _, lines := range []int{0, 10, 300_000} {
		s := &scratch{folder: t.TempDir()}
		line := "0123456789\n"
		for range lines {
			_, err := s.Write([]byte(line))
			require.NoError(t, err)
		}
		require.Equal(t, lines*len(line) > much, s.file != nil)
		var all bytes.Buffer
		require.NoError(t, s.copy(&all))
		require.True(t, strings.Repeat(line, lines) == all.String())
		if lines > 0 {
			part := make([]byte, 5)
			_, err := s.ReadAt(part, int64((lines-1)*len(line)+2))
			require.NoError(t, err)
			require.Equal(t, "23456", string(part))
		}
		s.drop()
		entries, err := os.ReadDir(s.folder)
		require.NoError(t, err)
		require.Empty(t, entries)
	}
}

// Where there is no room for it, that is told.
func TestScratchWithoutAFolder(t *testing.T) {
	s := &scratch{folder: t.TempDir() + "/none"}
	defer s.drop()
	_, err := s.Write(make([]byte, much))
	require.NoError(t, err)
	_, err = s.Write([]byte("more"))
	require.ErrorContains(t, err, "/none/.ventlint")
}
