package main

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// watching runs the program as on a terminal, or not, and gives what it says on
// standard error.
func watching(t *testing.T, watched bool, args ...string) string {
	t.Helper()
	t.Chdir(root)
	var stderr bytes.Buffer
	run(args, machine{stdout: io.Discard, stderr: &stderr, getenv: func(string) string { return "" }, now: time.Now, watched: watched})
	return stderr.String()
}

func TestProgressIsTold(t *testing.T) {
	for _, args := range [][]string{
		{"review", designs + "/ok/quarry-lane-apartment.vent.toml", earlyOne, withGaps},
		{"impact", "--from", "iecc-2018", "--to", "iecc-2021", designs + "/ok/quarry-lane-apartment.vent.toml", earlyOne, withGaps},
	} {
		told := watching(t, true, args...)
		require.Equal(t, "\r[==========                    ] 1 of 3 designs\r[====================          ] 2 of 3 designs"+
			"\r[==============================] 3 of 3 designs\r"+strings.Repeat(" ", len("[] 3 of 3 designs")+30)+"\r", told, args[0])
		require.Empty(t, watching(t, false, args...), "only on a terminal")
	}
	require.Empty(t, watching(t, true, "review", earlyOne), "one design takes no time")
}
