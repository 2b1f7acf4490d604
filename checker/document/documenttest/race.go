//go:build race

package documenttest

const raceDetector = true
