package rules_test

import (
	"testing"

	"github.com/ventlint/ventlint/rules"
)

// Reading and compiling the largest shipped pack.
func BenchmarkLoadPack(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := rules.NewLibrary(nil).Pack("irc-2021"); err != nil {
			b.Fatal(err)
		}
	}
}
