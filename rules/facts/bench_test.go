package facts

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

// All computed values of the whole shipped house, with their trails.
func BenchmarkWorksheet(b *testing.B) {
	source, err := os.ReadFile("../../testdata/designs/ok/alder-court.vent.toml")
	require.NoError(b, err)
	d, problems := design.Load("house.vent.toml", source)
	require.Empty(b, problems)
	b.ReportAllocs()
	for b.Loop() {
		require.NotEmpty(b, Of(d).Worksheet())
	}
}
