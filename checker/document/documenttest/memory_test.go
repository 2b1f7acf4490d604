package documenttest_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/ventlint/ventlint/checker/document/documenttest"
)

var held []byte

// Memory is counted also when it is freed, and a run that was disturbed is repeated.
func TestMegabytes(t *testing.T) {
	ask := func(n int) { held = make([]byte, n<<20) }
	assert.InDelta(t, 30, documenttest.Megabytes(40, func() { ask(10); ask(20) }), 2)

	sizes := []int{50, 40, 30}
	runs := 0
	disturbed := func() { ask(sizes[runs]); runs++ }
	assert.InDelta(t, 40, documenttest.Megabytes(45, disturbed), 2)
	assert.Equal(t, 2, runs)

	runs = 0
	assert.InDelta(t, 30, documenttest.Megabytes(10, disturbed), 2, "the least, also where none is enough")
	assert.Equal(t, 3, runs)
}
