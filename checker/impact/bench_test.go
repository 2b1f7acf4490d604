package impact

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/design/designtest"
)

// One design read and judged under two packs: designs per second, and bytes for
// each, freed or not.
func BenchmarkJudge(b *testing.B) {
	c := toCounty(b)
	var sources [][]byte
	for seed := range uint64(100) {
		sources = append(sources, []byte(designtest.House(seed)))
	}
	tally := c.NewTally(20)
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		d, problems := design.Load("house", sources[i%len(sources)])
		require.Empty(b, problems)
		tally.Add(c, c.Judge("house", d))
		i++
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "designs/s")
}
