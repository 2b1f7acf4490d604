package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

func citeCommand(m machine) *cobra.Command {
	var packs []string
	c := &cobra.Command{
		Use:   "cite RULE",
		Short: "tell what a rule asks, where it comes from, and what its samples show",
		Long: `RULE is the id of a rule, or PACK:RULE where two packs hold a rule of that id.
All packs that ship with the program are searched, and those of --pack.`,
		Example: "  ventlint cite irc-2021:working-space",
		Args:    cobra.ExactArgs(1),
		RunE:    func(_ *cobra.Command, args []string) error { return cite(m, args[0], packs) },
	}
	c.Flags().StringArrayVar(&packs, "pack", nil, "rule `pack`, by id or file, to search as well; may be repeated")
	return c
}

func cite(m machine, asked string, more []string) error {
	packName, id, qualified := strings.Cut(asked, ":")
	if !qualified {
		packName, id = "", asked
	}
	library := rules.NewLibrary(readFile)
	var ids []string
	found := false
	err := write(m, func(w writer) error {
		for _, name := range append(rules.BuiltIn(), more...) {
			pack, err := loadPack(library, name)
			if err != nil {
				return err
			}
			for _, r := range pack.Rules {
				ids = append(ids, r.ID)
			}
			if r := pack.Rule(id); r != nil && (packName == "" || packName == pack.Head.ID) {
				if found {
					fmt.Fprintln(w)
				}
				found = true
				printRule(w, pack, r)
			}
		}
		return nil
	})
	if err != nil || found {
		return err
	}
	if near := document.Near(id, ids); near != "" {
		return fmt.Errorf("no rule %q; did you mean %q?", asked, near)
	}
	return fmt.Errorf("no rule %q, expected one of those that \"ventlint packs PACK\" lists", asked)
}

func printRule(w writer, pack *rules.Effective, r *rules.Compiled) {
	fmt.Fprintf(w, "%s:%s\n%s\n\n", pack.Head.ID, r.ID, wrap(r.Title, 0))
	entry(w, "topic", string(r.Topic))
	entry(w, "weight", string(r.Level)+weight(r))
	entry(w, "due", "from stage "+string(r.Due))
	for _, e := range r.Each() {
		entry(w, "for each", e.Name+" of "+e.Collection)
	}
	entry(w, "when", r.When)
	entry(w, "requires", r.Require)
	entry(w, "judged", leftToPerson(r))
	entry(w, "remedy", r.Remedy)
	entry(w, "caution", r.Caution)
	for _, name := range r.LimitsUsed() {
		limit := pack.Limits[name]
		entry(w, "limit", fmt.Sprintf("%s = %s (%s): %s", name, limitValue(limit.Part, pack), limit.Pack, bases(limit.Part.Basis)))
	}
	for _, name := range r.TablesUsed() {
		entry(w, "table", fmt.Sprintf("%s: %s (%s)", name, pack.Tables[name].Part.Title, pack.Tables[name].Pack))
	}
	entry(w, "basis", bases(r.Basis))
	entry(w, "held by", origins(r))
	if len(r.Samples) > 0 {
		fmt.Fprintf(w, "\nsamples\n")
	}
	for _, s := range r.Samples {
		fmt.Fprintf(w, "  %-14s %s\n", s.Expect, s.Name)
	}
	fmt.Fprintf(w, "\n%s\n", wrap(localCode, 0))
}

const localCode = "Confirm the code adopted where the house stands: locally adopted codes and licensed practice decide."

// leftToPerson says when a person must judge what the rule does not find.
func leftToPerson(r *rules.Compiled) string {
	if r.JudgeWhen == "" {
		return ""
	}
	return "by a person, not failed, when " + r.JudgeWhen
}

func weight(r *rules.Compiled) string {
	text := ""
	if r.OpenLevel != "" {
		text += ", " + string(r.OpenLevel) + " while an input is missing"
	}
	if r.Judge {
		text += "; a person must judge"
	}
	return text
}

// entry prints one named part of a rule, set in; an empty part is left out.
func entry(w writer, name, text string) {
	if text == "" {
		return
	}
	const indent = 12
	lines := wrap(text, indent)
	fmt.Fprintf(w, "  %-9s %s\n", name, lines[indent:])
}

// bases prints where something comes from, and how it is known.
func bases(list []rules.Basis) string {
	var texts []string
	for _, b := range list {
		text := strings.TrimSpace(strings.Join([]string{b.Document, b.Edition, b.Section}, " "))
		text += " [" + string(b.Read) + "]"
		if b.Remark != "" {
			text += " " + b.Remark
		}
		texts = append(texts, strings.Join(strings.Fields(text), " "))
	}
	return strings.Join(texts, "; ")
}
