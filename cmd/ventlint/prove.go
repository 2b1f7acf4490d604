package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/rules"
)

func proveCommand(m machine) *cobra.Command {
	return &cobra.Command{
		Use:   "prove [PACK...]",
		Short: "run the samples of rule packs",
		Long: `Runs every sample of the rules of each pack (an id or a *.rules.toml file) and
tells which do not show what they say, and which kinds of sample a rule lacks.
Without a name, proves the packs that ship with the program.

exit code  0  every sample shows what it says
           1  one does not
           2  bad usage, or a pack that cannot be read or is invalid`,
		RunE: func(_ *cobra.Command, names []string) error { return prove(m, names) },
	}
}

func prove(m machine, names []string) error {
	if len(names) == 0 {
		names = rules.BuiltIn()
	}
	library := rules.NewLibrary(readFile)
	failed := false
	for _, name := range names {
		pack, err := library.Pack(name)
		if err != nil {
			return err
		}
		if err := write(m, "", func(w writer) error { failed = provePack(w, pack) || failed; return nil }); err != nil {
			return err
		}
	}
	if failed {
		return errFound
	}
	return nil
}

// provePack tells whether a sample of the pack did not show what it says.
func provePack(w writer, pack *rules.Effective) (failed bool) {
	samples, wrong := 0, 0
	for _, r := range pack.Rules {
		for _, run := range pack.Prove(r) {
			samples++
			if !run.Passed() {
				wrong++
				printRun(w, r, run)
			}
		}
		for _, gap := range r.Uncovered() {
			fmt.Fprintf(w, "%s: no sample %s\n", r.ID, gap)
		}
	}
	fmt.Fprintf(w, "%s: %d rules, %d samples, %d not as they say\n", pack.Head.ID, len(pack.Rules), samples, wrong)
	return wrong > 0
}

func printRun(w writer, r *rules.Compiled, run rules.SampleRun) {
	at := run.Sample.Position()
	fmt.Fprintf(w, "%s, line %d, sample %q: ", r.ID, at.Line, run.Sample.Name)
	if run.Err != nil {
		fmt.Fprintf(w, "%v\n", run.Err)
		return
	}
	fmt.Fprintf(w, "expected %s, found %s\n", run.Sample.Expect, run.Got)
	for _, j := range run.Judgements {
		if j.Outcome == run.Got {
			fmt.Fprintf(w, "    %s %s\n", j.Message, j.Reason)
		}
	}
}
