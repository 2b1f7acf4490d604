package design_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
)

// large is a design of 200 openings.
func large() []byte {
	var b strings.Builder
	b.WriteString(box)
	for i := range 200 {
		fmt.Fprintf(&b, "[[opening]]\nid = \"o-%d\" # comment\nkind = \"intake\"\nwall = \"south\"\nfrom_left = \"%d in\"\nabove_grade = \"6 ft\"\ndiameter = \"6 in\"\nflow = \"80 cfm\"\n\n", i, 10+2*i)
	}
	return []byte(b.String())
}

func BenchmarkLoad(b *testing.B) {
	source := large()
	b.SetBytes(int64(len(source)))
	b.ReportAllocs()
	for b.Loop() {
		_, problems := design.Load("large.vent.toml", source)
		require.Empty(b, problems)
	}
}

func BenchmarkParse(b *testing.B) {
	source := large()
	b.SetBytes(int64(len(source)))
	b.ReportAllocs()
	for b.Loop() {
		_, problems := document.Parse("large.vent.toml", source)
		require.Empty(b, problems)
	}
}

// The whole shipped house.
func BenchmarkHouse(b *testing.B) {
	source, err := os.ReadFile("../../testdata/designs/ok/alder-court.vent.toml")
	require.NoError(b, err)
	b.SetBytes(int64(len(source)))
	b.ReportAllocs()
	for b.Loop() {
		_, problems := design.Load("house.vent.toml", source)
		require.Empty(b, problems)
	}
}
