//go:build unix

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// Whole processes: time of the processor, which other work on the machine does not
// stretch much, and most memory. The empty program is what a process costs at least.
func BenchmarkProcess(b *testing.B) {
	folder := b.TempDir()
	ventlint, empty := built(b, folder, "ventlint", "."), built(b, folder, "empty", goFile(b, emptyProgram))
	parent := built(b, folder, "parent", goFile(b, smallParent))
	take := func(b *testing.B, designs int, command ...string) {
		b.Helper()
		measure(b, designs, command...)
		b.ReportMetric(most(b, parent, command...), "MB")
	}
	house := "../../testdata/designs/ok/alder-court.vent.toml"
	b.Run("empty program", func(b *testing.B) { take(b, 1, empty) })
	b.Run("version", func(b *testing.B) { take(b, 1, ventlint, "version") })
	b.Run("review of a house", func(b *testing.B) { take(b, 1, ventlint, "review", house) })
	for _, n := range []int{100, 200} {
		designs := street(b, house, n)
		b.Run(fmt.Sprintf("review of %d houses", n), func(b *testing.B) { take(b, n, ventlint, "review", designs) })
		b.Run(fmt.Sprintf("impact on %d houses", n), func(b *testing.B) {
			take(b, n, ventlint, "impact", "--from", "irc-2018", "--to", "irc-2021", designs)
		})
	}
}

const emptyProgram = "package main\n\nfunc main() {}\n"

// smallParent runs a command and prints the most memory of it, in kB. What the system
// tells of an ended process counts that of its parent too, and tests take much.
const smallParent = `package main

import (
	"fmt"
	"os"
	"os/exec"
	"syscall"
)

func main() {
	c := exec.Command(os.Args[1], os.Args[2:]...)
	if err := c.Run(); err != nil {
		panic(err)
	}
	fmt.Print(c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss)
}
`

func goFile(b *testing.B, source string) string {
	b.Helper()
	path := filepath.Join(b.TempDir(), "main.go")
	require.NoError(b, os.WriteFile(path, []byte(source), 0o600))
	return path
}

// built compiles a program as a release is: without C, which would be looked for
// and linked at each start.
func built(b *testing.B, folder, name, source string) string {
	b.Helper()
	path := filepath.Join(folder, name)
	c := exec.Command("go", "build", "-trimpath", "-o", path, source)
	c.Env = append(os.Environ(), "CGO_ENABLED=0")
	out, err := c.CombinedOutput()
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

func measure(b *testing.B, designs int, command ...string) {
	b.Helper()
	var worked time.Duration
	for range b.N {
		cmd := exec.Command(command[0], command[1:]...)
		require.NoError(b, cmd.Run())
		worked += cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(worked.Microseconds())/1000/float64(b.N), "cpu-ms")
	if designs > 1 {
		b.ReportMetric(float64(designs*b.N)/worked.Seconds(), "designs/cpu-s")
	}
}

// most is the most memory of a command in MB.
func most(b *testing.B, parent string, command ...string) float64 {
	b.Helper()
	out, err := exec.Command(parent, command...).Output()
	require.NoError(b, err)
	kilobytes, err := strconv.ParseFloat(string(out), 64)
	require.NoError(b, err)
	return kilobytes / 1024
}
