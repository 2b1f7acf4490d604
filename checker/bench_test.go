package checker_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
)

// One review of the whole shipped house against both standard packs, which are
// compiled already, in full and for a report that shows problems alone.
func BenchmarkReview(b *testing.B) {
	for name, depth := range map[string]checker.Depth{"evidence": checker.Evidence, "problems": checker.Problems} {
		b.Run(name, func(b *testing.B) { benchmarkReview(b, shipped(b, "ok/alder-court.vent.toml"), depth) })
	}
}

// The same house with 200 openings and 500 sources around it.
func BenchmarkStreet(b *testing.B) {
	benchmarkReview(b, street(b, 200, 500), checker.Problems)
}

func benchmarkReview(b *testing.B, source string, depth checker.Depth) {
	b.Helper()
	d := loaded(b, source)
	request := checker.Request{File: "house.vent.toml", Packs: packs(b, "irc-2021", "practice"), Date: today, Depth: depth}
	b.ReportAllocs()
	for b.Loop() {
		checker.Review(d, request)
	}
}

// street is the shipped house with more openings and sources.
func street(b testing.TB, openings, sources int) string {
	b.Helper()
	var text strings.Builder
	text.WriteString(shipped(b, "ok/alder-court.vent.toml"))
	for i := range openings {
		kind := []string{"intake", "exhaust"}[i%2]
		fmt.Fprintf(&text, "\n[[opening]]\nid = \"o%d\"\nkind = %q\nat = [\"%d ft\", \"%d ft\"]\nlevel = \"%d ft\"\ndiameter = \"6 in\"\n",
			i, kind, -100-i%20*15, -i/20*15, 4+i%5)
	}
	kinds := design.SourceKind("").Values()
	for i := range sources {
		fmt.Fprintf(&text, "\n[[source]]\nid = \"s%d\"\nkind = %q\nat = [\"%d ft\", \"%d ft\"]\nlevel = \"%d ft\"\npoint = true\n",
			i, kinds[i%len(kinds)], -100-i%40*8, -i/40*8, i%9)
	}
	return text.String()
}
