package main

import (
	"cmp"
	"fmt"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/reportfmt"
	"github.com/ventlint/ventlint/rules"
)

func reviewCommand(m machine) *cobra.Command {
	var f reviewFlags
	c := &cobra.Command{
		Use:   "review [PATH...]",
		Short: "review designs and report what must be corrected",
		Long: `Reviews each design (*.vent.toml) against its rule packs: those of --pack, else
those that the design declares in project.codes, else irc-2021 and practice. A
folder is searched for designs, but for folders inside that begin with a dot; "-"
reads one from standard input.

What no flag says is taken from ventlint.toml, which is looked for in this folder
and those around it, up to the root of the repository. Its designs are reviewed
where no path is given. "ventlint config" shows what is in force.

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
		RunE: func(c *cobra.Command, paths []string) error { return review(m, f, c.Flags().Changed, paths) },
	}
	f.settings(c)
	f.once(c)
	return c
}

// review runs the main job: read, review, report.
func review(m machine, f reviewFlags, changed func(string) bool, paths []string) error {
	if err := f.settle(m, changed, paths); err != nil {
		return err
	}
	if err := f.check(m); err != nil {
		return err
	}
	reports, err := f.destinations()
	if err != nil {
		return err
	}
	setting, err := f.setting()
	if err != nil {
		return err
	}
	files, err := find(f.paths, f.stdinName)
	if err == nil {
		err = reports.spare(files, f.packs, f.settingsFile())
	}
	if err != nil {
		return err
	}
	packs, err := loadPacks(f.packs, f.packProblem)
	if err != nil {
		return err
	}
	f.depth, f.alone = reports.depth(), len(files) == 1
	reporting, err := reports.begin(setting, reportfmt.Options{Color: f.colour(m)})
	if err != nil {
		return err
	}
	defer reporting.drop()
	return f.report(m, files, packs, reporting)
}

// report reviews the designs, hands each review to the reports, and turns what was
// found into the way the program ends.
func (f *reviewFlags) report(m machine, files []input, packs *packShelf, r *reporting) error {
	var doubt error
	err := reviewAll(m, files, packs, *f, func(o outcome) error {
		if o.failure != nil {
			r.run.Fail(*o.failure)
			return nil
		}
		doubt = cmp.Or(doubt, doubtOf(o.report))
		return plain(r.run.Add(o.report))
	})
	if err == nil {
		err = r.end(m)
	}
	if err != nil {
		return err
	}
	switch reviewed, failed := r.run.Count(); {
	case failed > 0:
		fmt.Fprintf(m.stderr, "ventlint: %d of %d designs could not be reviewed\n", failed, reviewed+failed)
		return errTold
	case doubt != nil:
		return doubt
	case r.run.Blocked():
		return errFound
	}
	return nil
}

// setting is what reports tell beside the reviews.
func (f *reviewFlags) setting() (reportfmt.Setting, error) {
	baseline, err := readBaseline(f.baseline, f.said("baseline"))
	return reportfmt.Setting{
		Baseline: baseline,
		Gate:     reportfmt.Gate{Level: rules.Level(f.failOn), NewOnly: f.failOnNew},
		Tool:     reportfmt.Tool{Name: "ventlint", Version: version()},
	}, err
}

// doubtOf is why a review says too little; nil where it does not.
func doubtOf(r *checker.Report) error {
	if r.Count().Decided() == 0 {
		return fmt.Errorf("%s: no rule could be asked of this design: nothing was checked", r.File)
	}
	if r.Unreached > 0 {
		return fmt.Errorf("%s: the design holds too much: %d rules were not asked of all that they range over", r.File, r.Unreached)
	}
	return nil
}
