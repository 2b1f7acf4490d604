package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/rules"
)

func proveCommand(m machine) *cobra.Command {
	var least float64
	c := &cobra.Command{
		Use:   "prove [PACK...]",
		Short: "run the samples of rule packs, and see whether they notice changes",
		Long: `Runs every sample of the rules of each pack (an id or a *.rules.toml file). Then
changes each rule in every way that should matter (a comparison turned, a limit
nudged, a clause dropped) and names the changes that no sample notices, and the
kinds of sample that a rule lacks. Without a name, proves the packs that ship with
the program.

exit code  0  every sample shows what it says, and enough changes are noticed
           1  one does not, or fewer changes are noticed than --min asks
           2  bad usage, or a pack that cannot be read or is invalid`,
		RunE: func(_ *cobra.Command, names []string) error { return prove(m, names, least) },
	}
	c.Flags().Float64Var(&least, "min", 0, "least share of changes that must be noticed, in percent")
	return c
}

func prove(m machine, names []string, least float64) error {
	if least < 0 || least > 100 {
		return fmt.Errorf("--min %v, expected a percentage from 0 to 100", least)
	}
	if len(names) == 0 {
		names = rules.BuiltIn()
	}
	library := rules.NewLibrary(readFile)
	failed := false
	for _, name := range names {
		pack, err := loadPack(library, name)
		if err != nil {
			return err
		}
		if err := write(m, func(w writer) error { failed = provePack(w, pack, least) || failed; return nil }); err != nil {
			return err
		}
	}
	if failed {
		return errFound
	}
	return nil
}

// provePack tells whether the pack falls short: a sample does not show what it
// says, or too few changes are noticed.
func provePack(w writer, pack *rules.Effective, least float64) (short bool) {
	samples, wrong, mutants, survivors := 0, 0, 0, 0
	for _, r := range pack.Rules {
		p := pack.ProveRule(r)
		samples, wrong = samples+len(p.Runs), wrong+p.Wrong()
		mutants, survivors = mutants+p.Mutants, survivors+len(p.Survivors)
		printProof(w, p)
	}
	fmt.Fprintf(w, "%s: %d rules, %d samples, %d not as they say; %d changes, %d not noticed (%.1f %% noticed)\n",
		pack.Head.ID, len(pack.Rules), samples, wrong, mutants, survivors, shareNoticed(mutants, survivors))
	return wrong > 0 || shareNoticed(mutants, survivors) < least
}

func shareNoticed(mutants, survivors int) float64 {
	if mutants == 0 {
		return 100
	}
	return 100 * float64(mutants-survivors) / float64(mutants)
}

func printProof(w writer, p rules.Proof) {
	for _, run := range p.Runs {
		if !run.Passed() {
			printRun(w, p.Rule, run)
		}
	}
	for _, m := range p.Survivors {
		fmt.Fprintf(w, "%s:%d:%d: %s: no sample notices %s\n", m.File, m.Position.Line, m.Position.Column, p.Rule.ID, m.Change)
	}
	for _, gap := range p.Gaps {
		fmt.Fprintf(w, "%s: no sample %s\n", p.Rule.ID, gap)
	}
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
