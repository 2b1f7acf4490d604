package main

import (
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
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
	b.ReportMetric(mostMemory(b), "MB-peak")
}

var highWater = regexp.MustCompile(`VmHWM:\s+(\d+) kB`)

// mostMemory is the peak of the resident memory in MB; 0 where it is not told.
func mostMemory(b *testing.B) float64 {
	status, err := os.ReadFile(filepath.FromSlash("/proc/self/status"))
	found := highWater.FindSubmatch(status)
	if err != nil || found == nil {
		return 0
	}
	kilobytes, err := strconv.ParseFloat(string(found[1]), 64)
	require.NoError(b, err)
	return kilobytes / 1024
}
