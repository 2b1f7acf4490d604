package rules_test

import (
	"testing"

	"github.com/ventlint/ventlint/rules"
)

// The largest shipped pack as a review takes it.
func BenchmarkLoadPack(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := rules.NewReviewLibrary(nil).Pack("irc-2021"); err != nil {
			b.Fatal(err)
		}
	}
}

// The same, with all that is asked of a pack from outside.
func BenchmarkCheckPack(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := rules.NewLibrary(nil).Pack("irc-2021"); err != nil {
			b.Fatal(err)
		}
	}
}
