package main

import (
	"errors"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets stories call the program as a command of its own.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"ventlint": func() {
		code := alone()
		if file := os.Getenv(peakFile); file != "" {
			tellPeak(file)
		}
		os.Exit(code)
	}})
}

// peakFile names the variable of the environment that names a file, to which the
// program under test writes the most memory it has held. What the system tells of an
// ended child counts that of its parent too.
const peakFile = "VENTLINT_TEST_PEAK"

func tellPeak(file string) {
	if err := os.WriteFile(file, []byte(strconv.FormatFloat(peak(), 'f', 1, 64)), 0o644); err != nil {
		panic(err)
	}
}

var highWater = regexp.MustCompile(`VmHWM:\s+(\d+) kB`)

// peak is the most resident memory of this process in MB; 0 where it is not told.
func peak() float64 {
	status, err := os.ReadFile("/proc/self/status")
	found := highWater.FindSubmatch(status)
	if err != nil || found == nil {
		return 0
	}
	kilobytes, err := strconv.ParseFloat(string(found[1]), 64)
	if err != nil {
		panic(err)
	}
	return kilobytes / 1024
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
