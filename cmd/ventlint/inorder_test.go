package main

import (
	"errors"
	"runtime"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/require"
)

// Whatever ends first, results are taken in the order of the things, and few are
// under way.
func TestInOrder(t *testing.T) {
	things := make([]int, 200)
	for i := range things {
		things[i] = i
	}
	var begun, taken atomic.Int32
	first := make(chan struct{})
	work := func(i int) int {
		if most := begun.Add(1) - taken.Load(); int(most) > 2*runtime.GOMAXPROCS(0)+2 {
			t.Errorf("%d are under way", most)
		}
		if i == 0 {
			<-first // ends after the second
		} else if i == 1 {
			close(first)
		}
		return i
	}
	var got []int
	require.NoError(t, inOrder(things, work, func(i int) error {
		taken.Add(1)
		got = append(got, i)
		return nil
	}))
	require.Equal(t, things, got)
}

// What cannot be taken ends it: the rest is not begun.
func TestInOrderEndsWithAnError(t *testing.T) {
	full := errors.New("full")
	var begun atomic.Int32
	err := inOrder(make([]int, 10_000), func(int) int { begun.Add(1); return 0 }, func(int) error { return full })
	require.ErrorIs(t, err, full)
	require.Less(t, int(begun.Load()), 100)
}
