package packfmt

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// Markdown writes a pack with all it inherits, for a page.
func Markdown(w io.Writer, e *rules.Effective) error {
	p := &page{}
	p.line("# %s: %s\n", e.Head.ID, cell(e.Head.Title))
	p.pack(e, func(r *rules.Compiled) string { return origin(e, r) })
	_, err := io.WriteString(w, p.b.String())
	return err
}

// page is Markdown as it is being written.
type page struct{ b strings.Builder }

func (p *page) line(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

// pack writes what stands below the title of a pack. about says more of a rule.
func (p *page) pack(e *rules.Effective, about func(*rules.Compiled) string) {
	p.about(e)
	p.line("Digest `sha256:%s`.", e.Digest())
	for _, topic := range rules.Topic("").Values() {
		list := ofTopic(e.Rules, rules.Topic(topic))
		if len(list) == 0 {
			continue
		}
		p.line("\n## %s: %s", e.Head.ID, topic)
		for _, r := range list {
			p.rule(e, r, about(r))
		}
	}
	p.tables(e, slices.Sorted(maps.Keys(e.Tables)))
	for _, off := range e.Off {
		p.line("\nSwitched off by `%s`: `%s`. %s", off.Pack, off.Rule, cell(off.Reason))
	}
}

func (p *page) about(e *rules.Effective) {
	if e.Head.Summary != "" {
		p.line("%s\n", cell(e.Head.Summary))
	}
	if len(e.Head.Extends) > 0 {
		p.line("Extends %s.\n", code(e.Head.Extends...))
	}
}

func ofTopic(list []*rules.Compiled, topic rules.Topic) []*rules.Compiled {
	var of []*rules.Compiled
	for _, r := range list {
		if r.Topic == topic {
			of = append(of, r)
		}
	}
	return of
}

// origin tells where a rule comes from, and who changed which part.
func origin(e *rules.Effective, r *rules.Compiled) string {
	text := fmt.Sprintf("From `%s`", r.Pack)
	for _, part := range slices.Sorted(maps.Keys(r.Given)) {
		text += fmt.Sprintf(", %s by `%s`", part, r.Given[part])
	}
	if len(r.Reached) > 0 {
		text += fmt.Sprintf("; altered by %s of `%s`", strings.Join(r.Reached, ", "), e.Head.ID)
	}
	return text + "."
}

func (p *page) rule(e *rules.Effective, r *rules.Compiled, about string) {
	p.line("\n### %s\n", r.ID)
	p.line("%s.\n", strings.TrimSuffix(cell(r.Title), "."))
	p.line("%s\n", about)
	weight := string(r.Level)
	if r.OpenLevel != "" {
		weight += ", " + string(r.OpenLevel) + " while an input is missing"
	}
	if r.Judge {
		weight += ", for a person to judge"
	}
	p.line("Weighs %s; due from stage %s.\n", weight, r.Due)
	p.expressions(r)
	p.line("\nRemedy: %s.", strings.TrimSuffix(cell(r.Remedy), "."))
	if r.Caution != "" {
		p.line("\nCaution: %s.", strings.TrimSuffix(cell(r.Caution), "."))
	}
	p.basis("Basis", r.Basis)
	p.limits(e, r)
	p.samples(e.Shown(r))
}

// expressions writes what the rule asks, as the pack says it.
func (p *page) expressions(r *rules.Compiled) {
	p.line("```")
	for _, each := range r.Each() {
		p.line("each %s of %s", each.Name, each.Collection)
	}
	for _, part := range [][2]string{{"when", r.When}, {"require", r.Require}, {"left to a person when", r.JudgeWhen}} {
		if part[1] != "" {
			p.line("%s %s", part[0], strings.ReplaceAll(strings.TrimSpace(part[1]), "\n", "\n  "))
		}
	}
	p.line("```")
}

// basis lists where something comes from, and how its writer knows.
func (p *page) basis(title string, list []rules.Basis) {
	p.line("\n%s:\n", title)
	for _, b := range list {
		p.line("- %s", source(b))
	}
}

func source(b rules.Basis) string {
	words := strings.Fields(strings.Join([]string{b.Document, b.Edition, b.Section}, " "))
	text := fmt.Sprintf("%s [%s]", strings.Join(words, " "), b.Read)
	if b.Remark != "" {
		text += ": " + b.Remark
	}
	return cell(text)
}

func (p *page) limits(e *rules.Effective, r *rules.Compiled) {
	if len(r.LimitsUsed())+len(r.TablesUsed()) == 0 {
		return
	}
	p.line("\n| figure | value | pack | basis |\n|---|---|---|---|")
	for _, name := range r.LimitsUsed() {
		l := e.Limits[name]
		p.line("| `%s` | %s | `%s` | %s |", name, shown(l.Part, r.Rule.Topic, e), l.Pack, sources(l.Part.Basis))
	}
	for _, name := range r.TablesUsed() {
		t := e.Tables[name]
		p.line("| table `%s` | %s | `%s` | %s |", name, cell(t.Part.Title), t.Pack, sources(t.Part.Basis))
	}
}

// shown prints a limit of a rule in the units of its pack.
func shown(l *rules.Limit, t rules.Topic, e *rules.Effective) string {
	if l.Value == nil {
		return "not set"
	}
	system := quantity.IP
	if e.Head.Units == "SI" {
		system = quantity.SI
	}
	return quantity.Format(l.Value.V, t.System(system))
}

func sources(list []rules.Basis) string {
	var texts []string
	for _, b := range list {
		texts = append(texts, source(b))
	}
	return strings.Join(texts, "; ")
}

// samples writes one row for each outcome.
func (p *page) samples(list []rules.Sample) {
	by := map[string][]string{}
	for _, s := range list {
		name := cell(s.Name)
		if s.Edge {
			name += " (on the limit)"
		}
		by[string(s.Expect)] = append(by[string(s.Expect)], name)
	}
	if len(by) == 0 {
		return
	}
	p.line("\n| outcome | samples |\n|---|---|")
	for _, expect := range rules.Expected("").Values() {
		if len(by[expect]) > 0 {
			p.line("| %s | %s |", expect, strings.Join(by[expect], "; "))
		}
	}
}

// cell is a text that stays in one line and one cell, and is text alone.
func cell(text string) string {
	return pageEscapes.Replace(strings.Join(strings.Fields(text), " "))
}

var pageEscapes = strings.NewReplacer(`\`, `\\`, "|", `\|`, "`", "\\`", "*", `\*`, "_", `\_`, "<", "&lt;", ">", "&gt;", "&", "&amp;", "[", `\[`, "]", `\]`)

func code(names ...string) string { return "`" + strings.Join(names, "`, `") + "`" }
