package main

import (
	_ "embed"
	"fmt"

	"github.com/spf13/cobra"
)

//go:embed starter.vent.toml
var starter []byte

//go:embed starter.rules.toml
var starterPack []byte

func starterCommand(m machine) *cobra.Command {
	return &cobra.Command{
		Use:   "starter [design|pack]",
		Short: "print a commented design, or local rule pack, to begin with",
		Long: `Prints a commented design at stage "concept" that reviews clean, or a commented
local pack that proves. Write it to a file and put your own in its place:

  ventlint starter > house.vent.toml
  ventlint starter pack > your-county.rules.toml`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			text := starter
			switch {
			case len(args) == 0 || args[0] == "design":
			case args[0] == "pack":
				text = starterPack
			default:
				return fmt.Errorf("no starter %q, expected design or pack", args[0])
			}
			return write(m, func(w writer) error { _, err := w.Write(text); return err })
		},
	}
}
