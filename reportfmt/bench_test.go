package reportfmt

import (
	"io"
	"testing"

	"github.com/stretchr/testify/require"
)

// One report of a house with faults, in every form.
func BenchmarkWrite(b *testing.B) {
	house := faultyHouse()
	for _, f := range formats() {
		b.Run(f.Name(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				require.NoError(b, Write(io.Discard, f, house))
			}
		})
	}
}
