package main

import (
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/reportfmt"
	"github.com/ventlint/ventlint/rules"
)

// reviewFlags are the choices of one review.
type reviewFlags struct {
	packs     []string
	format    string
	outputs   []string
	failOn    string
	baseline  string
	failOnNew bool
	date      string
	color     string
	stdinName string

	ignoreVariances bool
}

func reviewCommand(m machine) *cobra.Command {
	var f reviewFlags
	c := &cobra.Command{
		Use:   "review PATH...",
		Short: "review designs and report what must be corrected",
		Long: `Reviews each design (*.vent.toml) against its rule packs: those of --pack, else
those that the design declares in project.codes, else irc-2021 and practice. A
folder is searched for designs; "-" reads one from standard input.

The report goes to standard output in the form of --format. Each --output writes
one more, to a file, whole or not at all. With --baseline, reports tell what is
new since an earlier review, from its report as json, sarif-evidence or sarif. A
problem is known by its file, rule, subject and outcome, on whatever line.

exit code  0  nothing at or above the level of --fail-on
           1  something is; with --fail-on-new, something new is
           2  bad usage, or a file that cannot be read or is invalid`,
		Example: `  ventlint review house.vent.toml
  ventlint review --format lines --fail-on warning designs/
  ventlint review --output sarif=out.sarif --output junit=out.xml designs/
  ventlint review --baseline accepted.json --fail-on-new designs/`,
		RunE: func(_ *cobra.Command, paths []string) error { return review(m, f, paths) },
	}
	flags := c.Flags()
	flags.SortFlags = false
	flags.StringArrayVar(&f.packs, "pack", nil, "rule pack, by id or file; may be repeated")
	flags.StringVar(&f.format, "format", "text", "form of the report: "+strings.Join(reportfmt.Names(), ", "))
	flags.StringArrayVar(&f.outputs, "output", nil, "form and file of one more report, such as sarif=out.sarif; may be repeated")
	flags.StringVar(&f.failOn, "fail-on", "error", "least level that gives exit code 1: error, warning or note")
	flags.StringVar(&f.baseline, "baseline", "", "report of an earlier review to compare with")
	flags.BoolVar(&f.failOnNew, "fail-on-new", false, "give exit code 1 only for what the baseline does not have")
	flags.StringVar(&f.date, "date", "", "day of the review, YYYY-MM-DD; today when not given")
	flags.StringVar(&f.color, "color", "auto", "colour in text on standard output: auto, always or never")
	flags.BoolVar(&f.ignoreVariances, "ignore-variances", false, "judge as if the design recorded no variance")
	flags.StringVar(&f.stdinName, "stdin-name", "standard-input.vent.toml", "name of the design read from standard input")
	return c
}

// review runs the main job: read, review, report.
func review(m machine, f reviewFlags, paths []string) error {
	if err := f.check(m, paths); err != nil {
		return err
	}
	reports, err := f.destinations()
	if err != nil {
		return err
	}
	batch, err := f.batch(m)
	if err != nil {
		return err
	}
	files, err := find(paths, f.stdinName)
	if err == nil {
		err = reports.spare(files)
	}
	if err != nil {
		return err
	}
	packs, err := loadPacks(f.packs)
	if err != nil {
		return err
	}
	batch.Reports, batch.Failures = reviewAll(m, files, packs, f)
	if err := reports.write(m, batch); err != nil {
		return err
	}
	return verdict(m, batch)
}

// batch is what a run has to say beside its reviews.
func (f *reviewFlags) batch(m machine) (reportfmt.Batch, error) {
	baseline, err := readBaseline(f.baseline)
	return reportfmt.Batch{
		Baseline: baseline,
		Gate:     reportfmt.Gate{Level: rules.Level(f.failOn), NewOnly: f.failOnNew},
		Tool:     reportfmt.Tool{Name: "ventlint", Version: version()},
		Options:  reportfmt.Options{Color: f.colour(m)},
	}, err
}

func (f *reviewFlags) colour(m machine) bool {
	return f.color == "always" || f.color == "auto" && m.terminal && m.getenv("NO_COLOR") == ""
}

// check refuses flags that mean nothing, before any work is done.
func (f *reviewFlags) check(m machine, paths []string) error {
	if len(paths) == 0 {
		return fmt.Errorf("no design named, expected a file, a folder, or - for standard input")
	}
	if !oneOf(f.failOn, rules.Level("").Values()) {
		return fmt.Errorf("--fail-on %q, expected error, warning or note", f.failOn)
	}
	if f.failOnNew && f.baseline == "" {
		return fmt.Errorf("--fail-on-new tells nothing apart without --baseline, expected a report of an earlier review")
	}
	if f.date == "" {
		f.date = m.now().Format(time.DateOnly)
	}
	if _, err := time.Parse(time.DateOnly, f.date); err != nil {
		return fmt.Errorf("--date %q, expected a day such as 2026-03-31", f.date)
	}
	if !oneOf(f.color, []string{"auto", "always", "never"}) {
		return fmt.Errorf("--color %q, expected auto, always or never", f.color)
	}
	return nil
}

func oneOf(word string, among []string) bool {
	for _, w := range among {
		if w == word {
			return true
		}
	}
	return false
}

// verdict turns what was found into the way the program ends.
func verdict(m machine, batch reportfmt.Batch) error {
	if n := len(batch.Failures); n > 0 {
		fmt.Fprintf(m.stderr, "ventlint: %d of %d designs could not be reviewed\n", n, n+len(batch.Reports))
		return errTold
	}
	for _, r := range batch.Reports {
		if r.Count().Decided() == 0 {
			return fmt.Errorf("%s: no rule could be asked of this design: nothing was checked", r.File)
		}
	}
	if batch.Blocked() {
		return errFound
	}
	return nil
}
