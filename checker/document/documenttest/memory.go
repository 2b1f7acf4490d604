// Package documenttest measures, for tests, what reading a hostile file costs.
package documenttest

import (
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
)

// AtMost runs f and asserts that it asks for no more than the given megabytes
// (units of 2^20 bytes) of memory, freed or not. Nothing else may run meanwhile.
// Under the race detector, which makes programs ask for many times as much, f only
// runs.
func AtMost(t testing.TB, megabytes float64, f func()) {
	t.Helper()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	f()
	runtime.ReadMemStats(&after)
	if !RaceDetector {
		assert.LessOrEqual(t, float64(after.TotalAlloc-before.TotalAlloc)/(1<<20), megabytes, "megabytes")
	}
}
