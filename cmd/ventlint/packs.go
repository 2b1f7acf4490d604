package main

import (
	"fmt"
	"sort"
	"strings"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/packfmt"
)

// packForms are the forms in which a pack is printed.
var packForms = map[string]func(writer, *rules.Effective) error{
	"text": printPack, "toml": packfmt.TOML, "json": packfmt.JSON, "markdown": packfmt.Markdown,
}

func packsCommand(m machine) *cobra.Command {
	var format string
	c := &cobra.Command{
		Use:   "packs [PACK]",
		Short: "list the rule packs, or print one with all it inherits",
		Long: `Without a name, lists the packs that ship with the program. With one (an id or a
*.rules.toml file), prints its rules, limits and tables as they apply, each with
the pack that it comes from. As toml, the pack is one file that extends nothing
and judges alike.

A digest pins a pack: wherever a pack is named, "ID@sha256:" and at least 12 digits
of its digest refuse any other.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error { return packs(m, args, format) },
	}
	c.Flags().StringVar(&format, "format", "text", "`form` in which a pack is printed: text, toml, json or markdown")
	return c
}

func packs(m machine, names []string, format string) error {
	form := packForms[format]
	if form == nil {
		return fmt.Errorf("--format %q, expected text, toml, json or markdown", format)
	}
	library := rules.NewLibrary(readFile)
	if len(names) == 0 {
		if format != "text" {
			return fmt.Errorf("--format %s prints one pack, expected its id or file", format)
		}
		return listPacks(m, library)
	}
	pack, err := loadPack(library, names[0])
	if err != nil {
		return err
	}
	return write(m, func(w writer) error { return form(w, pack) })
}

func listPacks(m machine, library *rules.Library) error {
	return write(m, func(w writer) error {
		for _, id := range rules.BuiltIn() {
			pack, err := loadPack(library, id)
			if err != nil {
				return err
			}
			fmt.Fprintf(w, "%-20s %3d rules  %s\n", id, len(pack.Rules), pack.Head.Title)
		}
		return nil
	})
}

func printPack(w writer, pack *rules.Effective) error {
	h := pack.Head
	fmt.Fprintf(w, "%s: %s\n", h.ID, h.Title)
	if h.Summary != "" {
		fmt.Fprintf(w, "%s\n", wrap(h.Summary, 0))
	}
	if len(h.Extends) > 0 {
		fmt.Fprintf(w, "extends   %s\n", strings.Join(h.Extends, ", "))
	}
	fmt.Fprintf(w, "digest    sha256:%s\n", pack.Digest())
	printRules(w, pack)
	printLimits(w, pack)
	printTables(w, pack)
	for _, off := range pack.Off {
		fmt.Fprintf(w, "\nswitched off by %s: %s\n%s\n", off.Pack, off.Rule, wrap(off.Reason, 2))
	}
	return nil
}

func printRules(w writer, pack *rules.Effective) {
	topic := rules.Topic("")
	for _, r := range byTopic(pack.Rules) {
		if r.Topic != topic {
			topic = r.Topic
			fmt.Fprintf(w, "\n%s\n", strings.ToUpper(string(topic)))
		}
		fmt.Fprintf(w, "  %s  (%s, due at %s; %s)\n", r.ID, r.Level, r.Due, origins(r))
		fmt.Fprintf(w, "%s\n", wrap(r.Title, 6))
	}
}

// origins tells where a rule comes from, and which parts another pack changed.
func origins(r *rules.Compiled) string {
	text := r.Pack
	var parts []string
	for part := range r.Given {
		parts = append(parts, part)
	}
	sort.Strings(parts)
	for _, part := range parts {
		text += fmt.Sprintf(", %s by %s", part, r.Given[part])
	}
	if len(r.Reached) > 0 {
		text += "; altered by " + strings.Join(r.Reached, ", ")
	}
	return text
}

// byTopic puts rules in the order of a review, those of one topic as they stand.
func byTopic(list []*rules.Compiled) []*rules.Compiled {
	rank := map[rules.Topic]int{}
	for i, t := range rules.Topic("").Values() {
		rank[rules.Topic(t)] = i
	}
	sorted := append([]*rules.Compiled(nil), list...)
	sort.SliceStable(sorted, func(i, j int) bool { return rank[sorted[i].Topic] < rank[sorted[j].Topic] })
	return sorted
}

func printLimits(w writer, pack *rules.Effective) {
	if len(pack.Limits) == 0 {
		return
	}
	fmt.Fprintf(w, "\nLIMITS\n")
	for _, name := range keys(pack.Limits) {
		limit := pack.Limits[name]
		fmt.Fprintf(w, "  %-34s %-14s %s\n", name, limitValue(limit.Part, pack), limit.Pack)
	}
}

// limitValue prints a limit in the units of its pack.
func limitValue(limit *rules.Limit, pack *rules.Effective) string {
	if limit.Value == nil {
		return "not set"
	}
	return quantity.Format(limit.Value.V, units(pack))
}

// units is the system in which the figures of a pack are printed.
func units(pack *rules.Effective) quantity.System {
	if pack.Head.Units == "SI" {
		return quantity.SI
	}
	return quantity.IP
}

func printTables(w writer, pack *rules.Effective) {
	if len(pack.Tables) == 0 {
		return
	}
	fmt.Fprintf(w, "\nTABLES\n")
	for _, name := range keys(pack.Tables) {
		table := pack.Tables[name]
		fmt.Fprintf(w, "  %-34s %s\n%s\n", name, table.Pack, wrap(table.Part.Title, 6))
	}
}

func keys[T any](m map[string]T) []string {
	var list []string
	for k := range m {
		list = append(list, k)
	}
	sort.Strings(list)
	return list
}
