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
	output    string
	failOn    string
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

exit code  0  nothing at or above the level of --fail-on
           1  something is
           2  bad usage, or a file that cannot be read or is invalid`,
		Example: `  ventlint review house.vent.toml
  ventlint review --format lines --fail-on warning designs/`,
		RunE: func(_ *cobra.Command, paths []string) error { return review(m, f, paths) },
	}
	flags := c.Flags()
	flags.SortFlags = false
	flags.StringArrayVar(&f.packs, "pack", nil, "rule pack, by id or file; may be repeated")
	flags.StringVar(&f.format, "format", "text", "form of the report: "+strings.Join(reportfmt.Names(), ", "))
	flags.StringVar(&f.output, "output", "", "file to write the report to, instead of standard output")
	flags.StringVar(&f.failOn, "fail-on", "error", "least level that gives exit code 1: error, warning or note")
	flags.StringVar(&f.date, "date", "", "day of the review, YYYY-MM-DD; today when not given")
	flags.StringVar(&f.color, "color", "auto", "colour in text: auto, always or never")
	flags.BoolVar(&f.ignoreVariances, "ignore-variances", false, "judge as if the design recorded no variance")
	flags.StringVar(&f.stdinName, "stdin-name", "standard-input.vent.toml", "name of the design read from standard input")
	return c
}

// review runs the main job: read, review, report.
func review(m machine, f reviewFlags, paths []string) error {
	form, options, err := f.check(m, paths)
	if err != nil {
		return err
	}
	files, err := find(paths, f.stdinName)
	if err != nil {
		return err
	}
	packs, err := loadPacks(f.packs)
	if err != nil {
		return err
	}
	batch := reviewAll(m, files, packs, f)
	batch.Tool = reportfmt.Tool{Name: "ventlint", Version: version()}
	batch.Options = options
	if err := write(m, f.output, func(w writer) error { return form.Write(w, batch) }); err != nil {
		return err
	}
	return verdict(m, batch, rules.Level(f.failOn))
}

// check refuses flags that mean nothing, before any work is done.
func (f *reviewFlags) check(m machine, paths []string) (reportfmt.Format, reportfmt.Options, error) {
	var options reportfmt.Options
	if len(paths) == 0 {
		return nil, options, fmt.Errorf("no design named, expected a file, a folder, or - for standard input")
	}
	if !oneOf(f.failOn, rules.Level("").Values()) {
		return nil, options, fmt.Errorf("--fail-on %q, expected error, warning or note", f.failOn)
	}
	if f.date == "" {
		f.date = m.now().Format(time.DateOnly)
	}
	if _, err := time.Parse(time.DateOnly, f.date); err != nil {
		return nil, options, fmt.Errorf("--date %q, expected a day such as 2026-03-31", f.date)
	}
	switch f.color {
	case "auto":
		options.Color = m.terminal && f.output == "" && m.getenv("NO_COLOR") == ""
	case "always":
		options.Color = true
	case "never":
	default:
		return nil, options, fmt.Errorf("--color %q, expected auto, always or never", f.color)
	}
	form, err := reportfmt.Named(f.format)
	return form, options, err
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
func verdict(m machine, batch reportfmt.Batch, failOn rules.Level) error {
	if n := len(batch.Failures); n > 0 {
		fmt.Fprintf(m.stderr, "ventlint: %d of %d designs could not be reviewed\n", n, n+len(batch.Reports))
		return errTold
	}
	for _, r := range batch.Reports {
		if r.Count().Decided() == 0 {
			return fmt.Errorf("%s: no rule could be asked of this design: nothing was checked", r.File)
		}
		for i := range r.Results {
			if r.Results[i].Blocks(failOn) {
				return errFound
			}
		}
	}
	return nil
}
