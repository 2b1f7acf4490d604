package reportfmt

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document/documenttest"
)

// mostKept is how many bytes a format may keep of each design: its name in some
// words of the format, and where its part lies.
const mostKept = 400

// What a report keeps of many designs is little, in every format.
func TestReportsKeepNoReview(t *testing.T) {
	for _, f := range formats() {
		t.Run(f.Name(), func(t *testing.T) {
			run := Begin(Setting{Baseline: baselineFrom("json", batch())}, Output{Format: f, To: io.Discard, Aside: func() Scratch { return onDisk(t) }})
			add := func(from, to int) {
				for i := from; i < to; i++ {
					r := everyOutcome()
					r.File = fmt.Sprintf("designs/house-%04d.vent.toml", i)
					require.NoError(t, run.Add(r))
				}
			}
			const few, many = 50, 1000
			add(0, few)
			before := held()
			add(few, many)
			kept := (held() - before) / (many - few)
			t.Logf("%d bytes a design", kept)
			if !documenttest.RaceDetector {
				require.LessOrEqual(t, kept, mostKept)
			}
			require.NoError(t, run.End())
		})
	}
}

// onDisk is a place for parts.
func onDisk(t *testing.T) Scratch {
	t.Helper()
	file, err := os.Create(filepath.Join(t.TempDir(), "parts"))
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, file.Close()) })
	return file
}

// held is how many bytes are in use.
func held() int {
	runtime.GC()
	runtime.GC() // what the first made free to sweep
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int(m.HeapAlloc)
}
