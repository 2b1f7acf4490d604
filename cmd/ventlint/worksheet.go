package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/reportfmt"
)

func worksheetCommand(m machine) *cobra.Command {
	format := "text"
	c := &cobra.Command{
		Use:   "worksheet DESIGN",
		Short: "print every computed number with its formula and inputs",
		Long: `Prints each value that the program computes from a design, with its formula, the
inputs and where the file gives them, and the source of the formula, so that a
reader can follow with a pocket calculator. A value that lacks an input names it.`,
		Args: cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error { return worksheet(m, args[0], format) },
	}
	c.Flags().StringVar(&format, "format", format, "text, json or markdown")
	return c
}

// worksheetFormats are the ways to print a worksheet.
var worksheetFormats = map[string]func(machine, writer, *checker.Worksheet) error{
	"text": func(m machine, w writer, s *checker.Worksheet) error {
		return reportfmt.WriteWorksheet(w, s, reportfmt.Options{Color: m.terminal && m.getenv("NO_COLOR") == ""})
	},
	"json":     func(_ machine, w writer, s *checker.Worksheet) error { return reportfmt.WriteWorksheetJSON(w, s) },
	"markdown": func(_ machine, w writer, s *checker.Worksheet) error { return reportfmt.WriteWorksheetMarkdown(w, s) },
}

func worksheet(m machine, path, format string) error {
	printed, known := worksheetFormats[format]
	if !known {
		return fmt.Errorf("no format %q, expected text, json or markdown", format)
	}
	inputs, err := find([]string{path}, "standard-input.vent.toml")
	if err != nil {
		return err
	}
	if len(inputs) != 1 {
		return fmt.Errorf("%s: %d designs, expected one", path, len(inputs))
	}
	source, err := inputs[0].read(m.stdin)
	if err != nil {
		return err
	}
	d, problems := design.Load(inputs[0].name, source)
	if len(problems) > 0 {
		form, err := reportfmt.Named("lines")
		if err != nil {
			return err
		}
		batch := reportfmt.Batch{Failures: []reportfmt.Failure{{File: inputs[0].name, Problems: problems}}}
		if err := reportfmt.Write(m.stderr, form, batch); err != nil {
			return err
		}
		return errTold
	}
	return write(m, func(w writer) error {
		return printed(m, w, checker.Work(inputs[0].name, d))
	})
}
