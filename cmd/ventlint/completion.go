package main

import (
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/cmd/ventlint/config"
	"github.com/ventlint/ventlint/reportfmt"
	"github.com/ventlint/ventlint/rules"
)

// completions tells shells what may stand where: designs and packs as arguments,
// and the words of flags.
func completions(root *cobra.Command) {
	for _, c := range root.Commands() {
		switch c.Name() {
		case "review", "config", "worksheet", "draw", "impact":
			c.ValidArgsFunction = designFiles
		case "packs", "prove":
			c.ValidArgsFunction = packNames
		}
		for _, flag := range []string{"pack", "from", "to"} {
			completeFlag(c, flag, packNames)
		}
		completeFlag(c, "fail-on", words(rules.Level("").Values()))
		completeFlag(c, "color", words(config.Color("").Values()))
		completeFlag(c, "config", tomlFiles)
	}
	forms := map[string][]string{
		"review": reportfmt.Names(), "config": keys(configForms), "packs": keys(packForms), "impact": keys(impactForms),
	}
	for name, list := range forms {
		if c, _, err := root.Find([]string{name}); err == nil {
			completeFlag(c, "format", words(list))
		}
	}
	for _, name := range []string{"review", "config"} {
		if c, _, err := root.Find([]string{name}); err == nil {
			completeFlag(c, "output", outputs)
		}
	}
}

// completeFlag tells what a flag takes, where the command has the flag.
func completeFlag(c *cobra.Command, flag string, complete cobra.CompletionFunc) {
	if c.Flags().Lookup(flag) == nil {
		return
	}
	if err := c.RegisterFlagCompletionFunc(flag, complete); err != nil {
		panic("completion: " + err.Error()) // registered twice: a defect that every test finds
	}
}

func words(list []string) cobra.CompletionFunc {
	return cobra.FixedCompletions(list, cobra.ShellCompDirectiveNoFileComp)
}

func designFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{strings.TrimPrefix(designSuffix, ".")}, cobra.ShellCompDirectiveFilterFileExt
}

func tomlFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
}

// packNames offers the packs that ship with the program and the files that go on
// as typed; where neither is there, the shell offers its own.
func packNames(_ *cobra.Command, given []string, typed string) ([]string, cobra.ShellCompDirective) {
	offered, _ := filepath.Glob(literalGlob.Replace(typed) + "*" + packSuffix)
	for _, id := range rules.BuiltIn() {
		if strings.HasPrefix(id, typed) && !slices.Contains(given, id) {
			offered = append(offered, id)
		}
	}
	if len(offered) == 0 {
		return nil, cobra.ShellCompDirectiveDefault
	}
	return offered, cobra.ShellCompDirectiveNoFileComp
}

// literalGlob makes what was typed stand for itself in a pattern.
var literalGlob = strings.NewReplacer("*", `\*`, "?", `\?`, "[", `\[`)

// outputs offers forms, and leaves the file after "=" to the shell.
func outputs(_ *cobra.Command, _ []string, typed string) ([]string, cobra.ShellCompDirective) {
	if strings.Contains(typed, "=") {
		return nil, cobra.ShellCompDirectiveDefault
	}
	var offered []string
	for _, name := range reportfmt.Names() {
		offered = append(offered, name+"=")
	}
	return offered, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
}

const packSuffix = ".rules.toml"
