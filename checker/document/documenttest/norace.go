//go:build !race

package documenttest

// RaceDetector tells that the tests run under the race detector.
const RaceDetector = false
