package main

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document/documenttest"
)

// A review of many designs stays within the memory that one may take, in several
// formats at once: together their reports would take five times as much.
func TestManyDesigns(t *testing.T) {
	const many = 400
	designs, out := t.TempDir(), t.TempDir()
	for i := range many {
		require.NoError(t, os.WriteFile(filepath.Join(designs, fmt.Sprintf("house-%d.vent.toml", i)), []byte(lot+erv+end), 0o644))
	}
	c, stderr := process("review", "--output", "sarif-evidence="+out+"/a.sarif", "--output", "junit="+out+"/b.xml", "--output", "json="+out+"/c.json", designs)
	code, megabytes := peakOf(t, c)
	require.Equal(t, found, code, stderr.String())
	require.Equal(t, []string{"a.sarif", "b.xml", "c.json"}, left(t, out))
	t.Logf("%.0f MB for %d designs", megabytes, many)
	if !documenttest.RaceDetector {
		assert.LessOrEqual(t, megabytes, float64(mostMegabytes))
	}
}
