package main

import (
	_ "embed"

	"github.com/spf13/cobra"
)

//go:embed starter.vent.toml
var starter []byte

func starterCommand(m machine) *cobra.Command {
	return &cobra.Command{
		Use:   "starter",
		Short: "print a commented design to begin with",
		Long: `Prints a commented design at stage "concept" that reviews clean. Write it to a
file and fill in the house:

  ventlint starter > house.vent.toml`,
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			return write(m, func(w writer) error { _, err := w.Write(starter); return err })
		},
	}
}
