package main

import (
	"errors"
	"os"
	"os/exec"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets stories call the program as a command of its own.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"ventlint": main})
}

// The stories in testdata/script are written for people first: what is typed,
// and what comes of it. Each begins in a folder with the files of
// testdata/story, and finds the shipped designs under $DESIGNS.
func TestStories(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		Cmds:                map[string]func(*testscript.TestScript, bool, []string){"exits": exits, "houses": houses, "readme": readme},
		Setup: func(e *testscript.Env) error {
			e.Setenv("DESIGNS", root+"/"+designs)
			e.Setenv("SCHEMAS", root+"/rules/schema")
			return os.CopyFS(e.WorkDir, os.DirFS("testdata/story"))
		},
	})
}

// exits is the command "exits CODE COMMAND...": runs a command and demands the
// exit code.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	var exit *exec.ExitError
	if err := ts.Exec(args[1], args[2:]...); errors.As(err, &exit) {
		got = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if got != want {
		ts.Fatalf("exit code %d, expected %d", got, want)
	}
}
