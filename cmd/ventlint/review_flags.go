package main

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/cmd/ventlint/config"
	"github.com/ventlint/ventlint/reportfmt"
	"github.com/ventlint/ventlint/rules"
)

const usualFormat = "text"

// reviewFlags are the choices of one review.
type reviewFlags struct {
	paths     []string
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
	depth           checker.Depth
	alone           bool // one design is all that there is

	configuration configFlags
	file          *config.Config // nil: none
	from          map[string]origin
}

// settings are the flags whose part ventlint.toml can take.
func (f *reviewFlags) settings(c *cobra.Command) {
	flags := c.Flags()
	flags.SortFlags = false
	flags.StringArrayVar(&f.packs, "pack", nil, "rule `pack`, by id or file; may be repeated")
	flags.StringVar(&f.format, "format", usualFormat, "`form` of the report: "+strings.Join(reportfmt.Names(), ", "))
	flags.StringArrayVar(&f.outputs, "output", nil, "one more report as `form=file`, such as sarif=out.sarif; may be repeated")
	flags.StringVar(&f.failOn, "fail-on", "error", "least `level` that gives exit code 1: error, warning or note")
	flags.StringVar(&f.baseline, "baseline", "", "`file` with the report of an earlier review to compare with")
	flags.BoolVar(&f.failOnNew, "fail-on-new", false, "give exit code 1 only for what the baseline does not have")
	flags.BoolVar(&f.ignoreVariances, "ignore-variances", false, "judge as if the design recorded no variance")
	flags.StringVar(&f.color, "color", "auto", "`when` text on standard output has colour: auto, always or never")
	f.configuration.add(c)
}

// once are the flags of a single run.
func (f *reviewFlags) once(c *cobra.Command) {
	c.Flags().StringVar(&f.date, "date", "", "`day` of the review, YYYY-MM-DD; today when not given")
	c.Flags().StringVar(&f.stdinName, "stdin-name", "standard-input.vent.toml", "`name` of the design read from standard input")
}

func (f *reviewFlags) colour(m machine) bool {
	return f.color == "always" || f.color == "auto" && m.terminal && m.getenv("NO_COLOR") == ""
}

// check refuses choices that mean nothing, before any work is done.
func (f *reviewFlags) check(m machine) error {
	if len(f.paths) == 0 {
		return fmt.Errorf("no design named, expected a file, a folder, or - for standard input%s", f.elsewhere())
	}
	if f.date == "" {
		f.date = m.now().Format(time.DateOnly)
	}
	if _, err := time.Parse(time.DateOnly, f.date); err != nil {
		return fmt.Errorf("--date %q, expected a day such as 2026-03-31", f.date)
	}
	return f.checkSettings()
}

// elsewhere tells where designs could be named too.
func (f *reviewFlags) elsewhere() string {
	if f.file == nil {
		return ""
	}
	return fmt.Sprintf("; or designs in %s", f.file.Name)
}

// checkSettings refuses settings that mean nothing.
func (f *reviewFlags) checkSettings() error {
	if !slices.Contains(rules.Level("").Values(), f.failOn) {
		return fmt.Errorf("--fail-on %q, expected error, warning or note", f.failOn)
	}
	if f.failOnNew && f.baseline == "" {
		return fmt.Errorf("%s tells nothing apart without --baseline, expected a report of an earlier review", f.said("fail-on-new"))
	}
	if !slices.Contains(config.Color("").Values(), f.color) {
		return fmt.Errorf("--color %q, expected auto, always or never", f.color)
	}
	return nil
}
