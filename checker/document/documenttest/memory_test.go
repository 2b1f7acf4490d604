package documenttest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

var held []byte

// failures counts what would fail a test.
type failures struct {
	testing.TB
	count int
}

func (f *failures) Errorf(string, ...any) { f.count++ }
func (f *failures) Helper()               {}

// Memory counts also when it is freed.
func TestAtMost(t *testing.T) {
	if RaceDetector {
		t.Skip("memory is not measured under the race detector")
	}
	ask := func() { held = make([]byte, 10<<20); held = make([]byte, 20<<20) }
	AtMost(t, 32, ask)
	told := failures{TB: t}
	AtMost(&told, 28, ask)
	assert.Equal(t, 1, told.count)
}
