package main

import (
	"fmt"

	"github.com/spf13/cobra"
)

// configForms are the forms in which settings are printed.
var configForms = map[string]func(writer, *reviewFlags) error{
	"text": configText, "json": configJSON, "toml": configTOML,
}

func configCommand(m machine) *cobra.Command {
	var f reviewFlags
	c := &cobra.Command{
		Use:   "config [PATH...]",
		Short: "print the settings that a review would have, and where each comes from",
		Long: `Prints what a review with these flags, in this folder, is asked to do: each setting
with the flag, or the line of ventlint.toml, that says so. Flags win over the file,
and paths over its designs. It takes the flags of review; --format alone says how
the settings are printed.

ventlint.toml is looked for in this folder and those around it, up to the root of
the repository (the folder with .git). Its keys have the names of the flags, and its
relative paths begin at its own folder:

  designs = ["designs/**"]                 # where the command line names none
  except = ["designs/drafts"]
  pack = ["harbor-county.rules.toml", "practice@sha256:0123456789ab"]
  fail-on = "warning"
  format = "lines"
  output = ["sarif=review.sarif", "junit=review.xml"]
  baseline = "accepted.json"
  fail-on-new = true
  ignore-variances = false
  color = "auto"`,
		RunE: func(c *cobra.Command, paths []string) error {
			printed, _ := c.Flags().GetString("format")
			return showConfig(m, f, printed, c.Flags().Changed, paths)
		},
	}
	f.settings(c)
	c.Flags().Lookup("format").Usage = "`form` in which the settings are printed: text, json or toml"
	return c
}

func showConfig(m machine, f reviewFlags, printed string, changed func(string) bool, paths []string) error {
	form := configForms[printed]
	if form == nil {
		return fmt.Errorf("--format %q, expected text, json or toml", printed)
	}
	f.format = usualFormat
	all := func(flag string) bool { return flag != "format" && changed(flag) }
	if err := f.settle(m, all, paths); err != nil {
		return err
	}
	if err := f.checkSettings(); err != nil {
		return err
	}
	if _, err := f.destinations(); err != nil {
		return err
	}
	return write(m, func(w writer) error { return form(w, &f) })
}

// setting is one thing that a review is asked.
type setting struct {
	name   string
	values []string // of a setting that may have several
	value  any      // of another: a word, or a yes-or-no
	unset  string   // what it means that there is no value
	from   origin
}

// list lists the settings, in the order of the documentation.
func (f *reviewFlags) list() []setting {
	list := []setting{
		{name: "designs", values: f.paths, unset: "none, which a review refuses"},
		{name: "except", unset: "none"},
		{name: "pack", values: f.packs, unset: "those that each design declares, else irc-2021 and practice"},
		{name: "format", value: f.format},
		{name: "output", values: f.outputs, unset: "none"},
		{name: "fail-on", value: f.failOn},
		{name: "baseline", value: f.baseline, unset: "none"},
		{name: "fail-on-new", value: f.failOnNew},
		{name: "ignore-variances", value: f.ignoreVariances},
		{name: "color", value: f.color},
	}
	for i := range list {
		list[i].from = f.from[list[i].name]
	}
	if list[0].from.at.Line > 0 {
		list[0].values, list[1].values = f.patterns()
		list[1].from.at = f.file.At("except")
	}
	return list
}

// patterns gives what the configuration says of designs, as the working folder
// sees it.
func (f *reviewFlags) patterns() (designs, except []string) {
	for _, p := range f.file.Designs {
		designs = append(designs, f.file.Path(p.Text))
	}
	for _, p := range f.file.Except {
		except = append(except, f.file.Path(p.Text))
	}
	return designs, except
}

// given tells whether a setting has a value.
func (s setting) given() bool { return len(s.values) > 0 || s.value != nil && s.value != "" }
