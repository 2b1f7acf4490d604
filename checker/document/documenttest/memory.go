// Package documenttest measures, for tests, what reading a hostile file costs.
package documenttest

import "runtime"

// attempts is how often a costly run is measured again.
const attempts = 3

// Megabytes gives how much memory f asks for, freed or not, in units of 2^20 bytes.
// The runtime counts for the whole process, and what else goes on in it only adds:
// a run that asks for more than enough is repeated, and the least counts.
func Megabytes(enough float64, f func()) float64 {
	least := megabytes(f)
	for n := 1; n < attempts && least > enough; n++ {
		least = min(least, megabytes(f))
	}
	return least
}

func megabytes(f func()) float64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	f()
	runtime.ReadMemStats(&after)
	return float64(after.TotalAlloc-before.TotalAlloc) / (1 << 20)
}
