package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/checker"
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
	c.Flags().StringVar(&format, "format", format, "`form` of the worksheet: text, json or markdown")
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
	in, d, err := oneDesign(m, path)
	if err != nil {
		return err
	}
	return write(m, func(w writer) error {
		return printed(m, w, checker.Work(in.name, d))
	})
}
