package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/reportfmt"
	"github.com/ventlint/ventlint/rules/schema"
)

// schemaNames are what there is a schema of.
var schemaNames = append(schema.Names(), "report")

func schemaCommand(m machine) *cobra.Command {
	return &cobra.Command{
		Use:   "schema [design|pack|config|report]",
		Short: "print the JSON Schema of designs, packs, configurations or reports",
		Long: `Prints a JSON Schema (draft 2020-12): of designs, unless another is named. An editor
of TOML completes keys and words, shows what they mean, and marks mistakes, when the
first line of a file names its schema:

  ventlint schema > design.schema.json

  #:schema ./design.schema.json

A schema knows keys, types, words and units. What the parts of a file say together,
a review alone finds.`,
		Args:      cobra.MaximumNArgs(1),
		ValidArgs: schemaNames,
		RunE:      func(_ *cobra.Command, args []string) error { return printSchema(m, append(args, "design")[0]) },
	}
}

func printSchema(m machine, name string) error {
	text := schema.Named(name)
	if name == "report" {
		text = reportfmt.JSONSchema()
	}
	if text == nil {
		return fmt.Errorf("no schema %q, expected one of %s", name, strings.Join(schemaNames, ", "))
	}
	return write(m, func(w writer) error { _, err := w.Write(text); return err })
}
