package main

import (
	"fmt"

	"github.com/spf13/cobra"
)

const helpText = `{{.CommandPath}}: {{.Short}}

{{with .Long}}{{.}}

{{end}}how to call it
  {{.UseLine}}
{{if .HasAvailableSubCommands}}
commands
{{range .Commands}}{{if .IsAvailableCommand}}  {{rpad .Name 10}} {{.Short}}
{{end}}{{end}}
"ventlint help COMMAND" tells more of one
{{end}}{{if .HasAvailableLocalFlags}}
flags
{{.LocalFlags.FlagUsages}}{{end}}{{with .Example}}
for example
{{.}}
{{end}}`

func helpCommand() *cobra.Command {
	return &cobra.Command{
		Use: "help [COMMAND]", Short: "tell what a command does",
		RunE: func(c *cobra.Command, args []string) error {
			asked, _, err := c.Root().Find(args)
			if err != nil || asked == c.Root() && len(args) > 0 {
				return fmt.Errorf("unknown command %q, expected one of %s", args[0], commandNames(c.Root()))
			}
			return asked.Help()
		},
	}
}
