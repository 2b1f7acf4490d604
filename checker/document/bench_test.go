package document

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

func read(b *testing.B, files ...string) (sources []string) {
	size := 0
	for _, file := range files {
		source, err := os.ReadFile(file)
		require.NoError(b, err)
		sources = append(sources, string(source))
		size += len(source)
	}
	b.SetBytes(int64(size))
	b.ReportAllocs()
	return sources
}

// The packs of every review, but for their samples.
func BenchmarkPacks(b *testing.B) {
	sources := read(b, "../../rules/packs/irc-2021.rules.toml", "../../rules/packs/practice.rules.toml")
	for b.Loop() {
		for _, source := range sources {
			_, problems := ParseKnown(source, "[[rule.sample]]")
			require.Empty(b, problems)
		}
	}
}

// What the second reader takes where it is asked.
func BenchmarkSecondReader(b *testing.B) {
	source := read(b, "../../testdata/designs/ok/alder-court.vent.toml")[0]
	tree, problems := Parse("house", []byte(source))
	require.Empty(b, problems)
	for b.Loop() {
		require.Empty(b, tree.agree())
	}
}
