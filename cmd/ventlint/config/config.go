// Package config reads ventlint.toml, which says in the words of the flags what
// the reviews of a folder are asked to do.
package config

import (
	"path"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/reportfmt"
	"github.com/ventlint/ventlint/rules"
)

// Config is one ventlint.toml. Each key but designs and except has the name of a
// flag of review, and takes what the flag takes; a flag that may be repeated is a
// list. Relative paths begin at the folder of the file.
type Config struct {
	document.Ref `toml:"-"`

	Designs         []Pattern    `toml:"designs"`          // designs to review where the command line names none: files, folders, or patterns with *, ?, [a-z], and ** for any number of folders
	Except          []Pattern    `toml:"except"`           // designs to leave out of those, written alike
	Packs           []Pack       `toml:"pack"`             // rule packs in place of those that each design declares: ids or *.rules.toml files, each with "@sha256:" and its digest to pin it
	Format          *Form        `toml:"format"`           // form of the report on standard output
	Outputs         []Output     `toml:"output"`           // form and file of one more report each, such as "sarif=out.sarif"
	FailOn          *rules.Level `toml:"fail-on"`          // least level that gives exit code 1
	Baseline        *string      `toml:"baseline"`         // report of an earlier review to compare with
	FailOnNew       *bool        `toml:"fail-on-new"`      // give exit code 1 only for what the baseline does not have
	IgnoreVariances *bool        `toml:"ignore-variances"` // judge as if the designs recorded no variance
	Color           *Color       `toml:"color"`            // colour in text on standard output

	Name   string `toml:"-"` // of the file, for messages
	folder string // of the file, as the working folder sees it
}

// Pattern names a design, the designs in a folder, or those that a pattern with
// wildcards meets.
type Pattern struct {
	document.Ref `toml:"-"`
	Text         string
}

// Pack is a rule pack, by id or file, with or without its digest.
type Pack struct {
	document.Ref `toml:"-"`
	Text         string
}

// Output is the form of a report and the file that it goes to.
type Output struct {
	document.Ref `toml:"-"`
	Text         string
}

// Form is the name of a form of reports.
type Form string

// Values lists the forms.
func (Form) Values() []string { return reportfmt.Names() }

// Color says when text on standard output is coloured.
type Color string

// Values lists the choices.
func (Color) Values() []string { return []string{"auto", "always", "never"} }

// Path is a path of the file as the working folder sees it.
func (c *Config) Path(name string) string {
	if path.IsAbs(name) {
		return path.Clean(name)
	}
	return path.Join(c.folder, name)
}
