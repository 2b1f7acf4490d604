package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/cmd/ventlint/config"
	"github.com/ventlint/ventlint/reportfmt"
)

// configFlags say which configuration counts.
type configFlags struct {
	file string
	none bool
}

func (f *configFlags) add(c *cobra.Command) {
	c.Flags().StringVar(&f.file, "config", "", "`file` with the configuration, in place of the ventlint.toml that is found")
	c.Flags().BoolVar(&f.none, "no-config", false, "read no configuration")
}

// read finds and reads the configuration; nil when there is none.
func (f *configFlags) read(m machine) (*config.Config, error) {
	name, err := f.name()
	if err != nil || name == "" {
		return nil, err
	}
	source, err := readFile(name)
	if err != nil {
		return nil, err
	}
	c, problems := config.Load(name, source)
	return c, tell(m, name, problems)
}

// name is the path of the configuration from the working folder.
func (f *configFlags) name() (string, error) {
	switch {
	case f.none && f.file != "":
		return "", fmt.Errorf("--no-config beside --config %q, expected one of them", f.file)
	case f.none || f.file != "":
		return f.file, nil
	}
	folder, err := os.Getwd()
	if err != nil {
		return "", err
	}
	found, err := config.Find(folder)
	if err != nil || found == "" {
		return "", plain(err)
	}
	return filepath.Rel(folder, found)
}

// tell lists mistakes of a file on standard error; it gives nil when there are
// none.
func tell(m machine, name string, problems []document.Problem) error {
	if len(problems) == 0 {
		return nil
	}
	for _, p := range problems {
		text := p.Message
		if p.Hint != "" {
			text += "; " + p.Hint
		}
		fmt.Fprintf(m.stderr, "%s:%d:%d: %s\n", filepath.ToSlash(name), p.Position.Line, p.Position.Column, reportfmt.Visible(text))
	}
	return errTold
}
