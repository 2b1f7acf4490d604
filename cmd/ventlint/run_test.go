package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A command that is built alone helps and errs as it does among the others.
func TestCommandsAlone(t *testing.T) {
	said := func(build func(machine) int) string {
		var out, errs strings.Builder
		code := build(machine{stdin: strings.NewReader(""), stdout: &out, stderr: &errs, getenv: func(string) string { return "" }})
		return strings.Join([]string{out.String(), errs.String()}, "\n--\n") + string(rune('0'+code))
	}
	for _, c := range commandList {
		for _, args := range [][]string{{c.name, "--help"}, {c.name, "--no-such-flag"}, {c.name, "-h", "version"}} {
			alone := said(func(m machine) int { return run(args, m) })
			among := said(func(m machine) int { return finish(commands(m), args, m) })
			assert.Equal(t, among, alone, args)
		}
	}
	require.Len(t, commands(machine{}).Commands(), len(commandList)+1, "and completion")
}
