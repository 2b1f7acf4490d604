package main

import (
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Ten thousand designs under two packs: seconds, and the most memory that the
// process has held, where the system tells. Run it alone: go test ./cmd/ventlint
// -run none -bench TenThousand -benchtime 1x
func BenchmarkTenThousandDesigns(b *testing.B) {
	folder := b.TempDir()
	require.NoError(b, writeHouses(folder, 10_000))
	for b.Loop() {
		code := run([]string{"impact", "--from", "irc-2021", "--to", "irc-2024", folder},
			machine{stdin: strings.NewReader(""), stdout: io.Discard, stderr: io.Discard})
		require.Equal(b, clean, code)
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N), "s/run")
	b.ReportMetric(peak(), "MB-peak")
}
