package checker_test

import (
	"testing"

	"github.com/ventlint/ventlint/checker"
)

// One review of the whole shipped house against both standard packs, which are
// compiled already.
func BenchmarkReview(b *testing.B) {
	d := loaded(b, shipped(b, "ok/alder-court.vent.toml"))
	request := checker.Request{File: "house.vent.toml", Packs: packs(b, "irc-2021", "practice"), Date: today}
	b.ReportAllocs()
	for b.Loop() {
		checker.Review(d, request)
	}
}
