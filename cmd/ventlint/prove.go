package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/checker/quantity"
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

Inherited rules that no override can alter are run as they are. A rule that an
override reaches is proven by the samples of its [[change]], by [[sample]] tables
with rule = "ID", and by those of the parent that still show the same; those that
now show something else are told, and are no failure.

exit code  0  every sample shows what it says, and enough changes are noticed
           1  one does not, fewer changes are noticed than --min asks, or the pack
              takes more work than a proof may, so that not all was tried
           2  bad usage, or a pack that cannot be read or is invalid`,
		RunE: func(_ *cobra.Command, names []string) error { return prove(m, names, least) },
	}
	c.Flags().Float64Var(&least, "min", 0, "least share of changes that must be noticed, in `percent`")
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

// tally is what the proofs of a pack come to.
type tally struct{ inherited, samples, wrong, mutants, survivors, untried int }

// provePack tells whether the pack falls short: a sample does not show what it
// says, too few changes are noticed, or not all was tried.
func provePack(w writer, pack *rules.Effective, least float64) (short bool) {
	var sum tally
	proving := pack.Proving()
	for _, r := range pack.Rules {
		p := proving.Rule(r)
		sum.add(p)
		printProof(w, pack, p)
	}
	inherited := ""
	if sum.inherited > 0 {
		inherited = fmt.Sprintf(" (%d inherited as they are)", sum.inherited)
	}
	fmt.Fprintf(w, "%s: %d rules%s, %d samples, %d not as they say; %d changes, %d not noticed (%.1f %% noticed)\n",
		pack.Head.ID, len(pack.Rules), inherited, sum.samples, sum.wrong, sum.mutants, sum.survivors, sum.noticed())
	if sum.untried > 0 {
		fmt.Fprintf(w, "%s: %d rules not proven in full: the pack takes more work than a proof may, expected fewer or simpler rules and samples\n", pack.Head.ID, sum.untried)
	}
	return sum.wrong > 0 || sum.noticed() < least || sum.untried > 0
}

func (t *tally) add(p rules.Proof) {
	t.samples, t.wrong = t.samples+len(p.Runs), t.wrong+p.Wrong()
	t.mutants, t.survivors = t.mutants+p.Mutants, t.survivors+len(p.Survivors)
	if p.Inherited {
		t.inherited++
	}
	if p.Untried > 0 || p.Unchanged {
		t.untried++
	}
}

// noticed is the share of the changes that a sample noticed, in percent.
func (t *tally) noticed() float64 {
	if t.mutants == 0 {
		return 100
	}
	return 100 * float64(t.mutants-t.survivors) / float64(t.mutants)
}

func printProof(w writer, pack *rules.Effective, p rules.Proof) {
	for _, run := range p.Runs {
		if !run.Passed() {
			printRun(w, pack, p.Rule, run)
		}
	}
	for _, run := range p.Differing {
		printDiffering(w, pack, p.Rule, run)
	}
	if p.Unshown {
		fmt.Fprintf(w, "%s: gap: %s of %s alters it, and no sample of the pack shows how\n", p.Rule.ID, strings.Join(p.Rule.Reached, ", "), pack.Head.ID)
	}
	for _, m := range p.Survivors {
		fmt.Fprintf(w, "%s:%d:%d: %s: no sample notices %s\n", m.File, m.Position.Line, m.Position.Column, p.Rule.ID, m.Change)
	}
	for _, x := range p.Unneeded {
		fmt.Fprintf(w, "%s: listed as equivalent for nothing: %s\n", p.Rule.ID, x.Change)
	}
	for _, gap := range p.Gaps {
		fmt.Fprintf(w, "%s: no sample %s\n", p.Rule.ID, gap)
	}
	printUntried(w, p)
}

// printUntried tells what there was no work left for.
func printUntried(w writer, p rules.Proof) {
	if p.Untried > 0 {
		fmt.Fprintf(w, "%s: %d samples not tried\n", p.Rule.ID, p.Untried)
	}
	if p.Unchanged {
		fmt.Fprintf(w, "%s: changes beyond the first %d not tried\n", p.Rule.ID, p.Mutants)
	}
}

// printDiffering tells of a parent's sample that shows otherwise under the pack.
func printDiffering(w writer, pack *rules.Effective, r *rules.Compiled, run rules.SampleRun) {
	now := string(run.Got)
	if run.Err != nil {
		now = run.Err.Error()
	}
	fmt.Fprintf(w, "%s: the parent's sample %q shows %s, and with %s of %s now %s\n",
		r.ID, run.Sample.Name, run.Sample.Expect, strings.Join(r.Reached, ", "), pack.Head.ID, now)
}

func printRun(w writer, pack *rules.Effective, r *rules.Compiled, run rules.SampleRun) {
	at := run.Sample.Position()
	fmt.Fprintf(w, "%s:%d:%d: %s: sample %q: ", run.Sample.File(), at.Line, at.Column, r.ID, run.Sample.Name)
	if run.Err != nil {
		fmt.Fprintf(w, "%v\n", run.Err)
		return
	}
	fmt.Fprintf(w, "expected %s, found %s\n", run.Sample.Expect, run.Got)
	for _, j := range run.Judgements {
		if j.Outcome == run.Got {
			printJudgement(w, pack, j)
		}
	}
}

// printJudgement says why a subject of a sample came out as it did: in words, and
// by the figures that were compared.
func printJudgement(w writer, pack *rules.Effective, j rules.Judgement) {
	for _, text := range slices.Compact([]string{j.Message, j.Reason}) {
		if text != "" {
			fmt.Fprintf(w, "    %s\n", text)
		}
	}
	for _, c := range j.Require.Parts {
		if c.Found != nil && c.Required != nil {
			found, required := quantity.FormatPair(c.Found, c.Required, units(pack))
			fmt.Fprintf(w, "    %s: %s %s %s is %s\n", c.Text, found, c.Operator, required, c.Truth)
		}
	}
}
