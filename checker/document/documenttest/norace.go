//go:build !race

package documenttest

const raceDetector = false
