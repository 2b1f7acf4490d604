package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"time"

	"github.com/mattn/go-isatty"
	"github.com/spf13/cobra"
)

// The exit codes; no flag changes them.
const (
	clean    = 0 // nothing at or above the level of --fail-on
	found    = 1 // something is
	couldNot = 2 // bad usage, or a file that cannot be read or is invalid
)

// machine is what the program takes from outside.
type machine struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	getenv         func(string) string
	now            func() time.Time
	terminal       bool // stdout shows on one
	watched        bool // stderr shows on one
}

func here() machine {
	return machine{os.Stdin, os.Stdout, os.Stderr, os.Getenv, time.Now, isatty.IsTerminal(os.Stdout.Fd()), isatty.IsTerminal(os.Stderr.Fd())}
}

// errFound ends a command that did its work and found something.
var errFound = errors.New("found")

// errTold ends a command that could not run and has said why.
var errTold = errors.New("told")

// run is the whole program but for the process around it.
func run(args []string, m machine) int {
	out := &outlet{to: m.stdout}
	m.stdout = out
	code := finish(commandFor(m, args), args, m)
	if err := out.failure(); code == clean && err != nil {
		fmt.Fprintln(m.stderr, "ventlint: "+err.Error())
		return couldNot
	}
	return code
}

// finish runs a command and tells what went wrong.
func finish(root *cobra.Command, args []string, m machine) int {
	root.SetArgs(args)
	err := root.Execute()
	switch {
	case err == nil:
		return clean
	case errors.Is(err, errFound):
		return found
	case !errors.Is(err, errTold):
		fmt.Fprintln(m.stderr, "ventlint: "+err.Error())
	}
	return couldNot
}

// commandFor builds the command that is asked for alone, as most of a short run
// would go into building the others; or all, where none is or help is wanted of them.
func commandFor(m machine, args []string) *cobra.Command {
	for _, c := range commandList {
		if len(args) > 0 && args[0] == c.name {
			root := rootCommand(m)
			root.CompletionOptions.DisableDefaultCmd = true
			root.AddCommand(c.build(m))
			return root
		}
	}
	return commands(m)
}

// commands builds the command tree.
func commands(m machine) *cobra.Command {
	root := rootCommand(m)
	for _, c := range commandList {
		root.AddCommand(c.build(m))
	}
	completions(root)
	root.InitDefaultCompletionCmd()
	if c, _, err := root.Find([]string{"completion"}); err == nil {
		c.Short = "print a script by which a shell completes commands"
	}
	return root
}

// commandList is what the program can do.
var commandList = []struct {
	name  string
	build func(machine) *cobra.Command
}{
	{"review", reviewCommand},
	{"worksheet", worksheetCommand},
	{"draw", drawCommand},
	{"packs", packsCommand},
	{"cite", citeCommand},
	{"prove", proveCommand},
	{"impact", impactCommand},
	{"starter", starterCommand},
	{"config", configCommand},
	{"schema", schemaCommand},
	{"version", versionCommand},
}

func rootCommand(m machine) *cobra.Command {
	root := &cobra.Command{
		Use:           "ventlint COMMAND",
		Short:         "review residential ventilation designs against rule packs",
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cobra.ArbitraryArgs,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return c.Help()
			}
			return fmt.Errorf("unknown command %q, expected one of %s", args[0], commandNames(c))
		},
	}
	root.SetIn(m.stdin)
	root.SetOut(m.stdout)
	root.SetErr(m.stderr)
	root.SetHelpTemplate(helpText)
	root.SetHelpCommand(helpCommand())
	return root
}

func commandNames(root *cobra.Command) string {
	names := ""
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			if names != "" {
				names += ", "
			}
			names += c.Name()
		}
	}
	return names
}

// version is what the build recorded.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(devel)"
	}
	return info.Main.Version
}

func versionCommand(m machine) *cobra.Command {
	return &cobra.Command{
		Use: "version", Short: "print the program's version", Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintln(m.stdout, "ventlint "+version())
			return err
		},
	}
}
