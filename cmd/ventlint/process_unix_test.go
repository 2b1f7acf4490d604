//go:build unix

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// Whole processes: time of the processor, which other work on the machine does not
// stretch much, and most memory. The empty program is what a process costs at least.
func BenchmarkProcess(b *testing.B) {
	folder := b.TempDir()
	empty, ventlint := built(b, folder, "empty", emptyProgram(b)), built(b, folder, "ventlint", ".")
	house := "../../testdata/designs/ok/alder-court.vent.toml"
	b.Run("empty program", func(b *testing.B) { measure(b, 1, empty) })
	b.Run("version", func(b *testing.B) { measure(b, 1, ventlint, "version") })
	b.Run("review of a house", func(b *testing.B) { measure(b, 1, ventlint, "review", house) })
	for _, n := range []int{100, 200} {
		designs := street(b, house, n)
		b.Run(fmt.Sprintf("review of %d houses", n), func(b *testing.B) { measure(b, n, ventlint, "review", designs) })
		b.Run(fmt.Sprintf("impact on %d houses", n), func(b *testing.B) {
			measure(b, n, ventlint, "impact", "--from", "irc-2018", "--to", "irc-2021", designs)
		})
	}
}

func emptyProgram(b *testing.B) string {
	b.Helper()
	path := filepath.Join(b.TempDir(), "main.go")
	require.NoError(b, os.WriteFile(path, []byte("package main\n\nfunc main() {}\n"), 0o600))
	return path
}

func built(b *testing.B, folder, name, source string) string {
	b.Helper()
	path := filepath.Join(folder, name)
	out, err := exec.Command("go", "build", "-o", path, source).CombinedOutput()
	require.NoError(b, err, string(out))
	return path
}

// street is a folder with one house many times.
func street(b *testing.B, house string, n int) string {
	b.Helper()
	source, err := os.ReadFile(house)
	require.NoError(b, err)
	folder := b.TempDir()
	for i := range n {
		require.NoError(b, os.WriteFile(filepath.Join(folder, fmt.Sprintf("house-%d.vent.toml", i)), source, 0o600))
	}
	return folder
}

func measure(b *testing.B, designs int, program string, args ...string) {
	b.Helper()
	var worked time.Duration
	most := int64(0)
	for range b.N {
		cmd := exec.Command(program, args...)
		require.NoError(b, cmd.Run())
		worked += cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
		most = max(most, int64(cmd.ProcessState.SysUsage().(*syscall.Rusage).Maxrss))
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(worked.Microseconds())/1000/float64(b.N), "cpu-ms")
	b.ReportMetric(float64(most)/1024, "MB")
	if designs > 1 {
		b.ReportMetric(float64(designs*b.N)/worked.Seconds(), "designs/cpu-s")
	}
}
