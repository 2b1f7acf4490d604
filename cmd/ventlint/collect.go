package main

import (
	"os"
	"runtime/debug"
)

// When memory is collected: percent of what is in use that may pile up, and bytes
// in all from which on it is collected at once. Most runs are over before that, and
// those of many designs keep little.
const (
	seldom = 400
	spare  = 96 << 20
)

// collect sets when memory is collected, where the environment does not.
func collect(percent int, from int64) {
	if os.Getenv("GOGC") == "" && os.Getenv("GOMEMLIMIT") == "" {
		debug.SetGCPercent(percent)
		debug.SetMemoryLimit(from)
	}
}
