package main

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Colours come on a terminal unless NO_COLOR has a value, and where they are
// asked for.
func TestColour(t *testing.T) {
	for _, c := range []struct {
		color    string
		terminal bool
		noColor  string
		want     bool
	}{
		{"auto", true, "", true}, {"auto", true, "1", false}, {"auto", false, "", false},
		{"always", false, "1", true}, {"never", true, "", false},
	} {
		f := reviewFlags{color: c.color}
		m := machine{terminal: c.terminal, getenv: func(name string) string {
			require.Equal(t, "NO_COLOR", name)
			return c.noColor
		}}
		require.Equal(t, c.want, f.colour(m), "%+v", c)
	}
}
