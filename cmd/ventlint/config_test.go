package main

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The shipped configurations do their work from any folder, without a path on the
// command line.
func TestShippedConfigurations(t *testing.T) {
	got := atRoot(t, "review", "--config", "testdata/configs/design-firm.toml")
	require.Empty(t, got.stderr)
	require.Equal(t, clean, got.code)
	got = atRoot(t, "config", "--config", "testdata/configs/design-firm.toml")
	require.Contains(t, got.stdout, "testdata/designs/ok/quarry-*")

	got = atRoot(t, "review", "--date", "2026-03-31", "--config", "testdata/configs/jurisdiction.toml")
	require.Empty(t, got.stderr)
	require.Equal(t, found, got.code)
	require.Contains(t, got.stdout, "testdata/designs/faults/alder-court-faults.vent.toml:")
	require.Contains(t, got.stdout, "[harbor-county:")
	require.NotContains(t, got.stdout, "[practice:", "the county's pack alone is asked")
}
