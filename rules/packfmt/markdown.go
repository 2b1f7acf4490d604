package packfmt

import (
	"fmt"
	"io"
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// Markdown writes a pack with all it inherits, for a page.
func Markdown(w io.Writer, e *rules.Effective) error {
	p := &page{}
	p.line("# %s: %s\n", e.Head.ID, cell(title(e)))
	p.about(e)
	p.line("Digest `sha256:%s`.", e.Digest())
	p.rules(e, e.Rules, func(r *rules.Compiled) string { return origin(e, r) })
	p.tables(e, slices.Sorted(maps.Keys(e.Tables)))
	p.off(e.Off)
	_, err := w.Write(p.text())
	return err
}

// title is that of a pack, with its edition.
func title(e *rules.Effective) string {
	if e.Head.Edition == "" {
		return e.Head.Title
	}
	return fmt.Sprintf("%s (%s)", e.Head.Title, e.Head.Edition)
}

// page is Markdown as it is being written.
type page struct {
	b    strings.Builder
	only string // pack whose tables alone stand on it; those of others on their own pages
}

// text is what was written, with one empty line where there were more.
func (p *page) text() []byte {
	return []byte(strings.ReplaceAll(p.b.String(), "\n\n\n", "\n\n"))
}

func (p *page) line(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

// rules writes a list of contents, and the rules by their topics. about says more
// of a rule; it may be empty.
func (p *page) rules(e *rules.Effective, list []*rules.Compiled, about func(*rules.Compiled) string) {
	topics := rules.Topic("").Values()
	p.line("")
	for _, topic := range topics {
		for i, r := range ofTopic(list, rules.Topic(topic)) {
			if i == 0 {
				p.line("- [%s](#%s)", topic, topic)
			}
			p.line("  - [`%s`](#%s): %s", r.ID, r.ID, cell(r.Title))
		}
	}
	for _, topic := range topics {
		for i, r := range ofTopic(list, rules.Topic(topic)) {
			if i == 0 {
				p.line("\n## %s", topic)
			}
			p.rule(e, r, about(r))
		}
	}
}

// off lists rules that are switched off.
func (p *page) off(list []rules.SwitchedOff) {
	if len(list) == 0 {
		return
	}
	p.line("\n## Switched off\n\n| rule | by | reason |\n|---|---|---|")
	for _, off := range list {
		p.line("| `%s` | `%s` | %s |", off.Rule, off.Pack, cell(off.Reason))
	}
}

func (p *page) about(e *rules.Effective) {
	if e.Head.Summary != "" {
		p.line("%s\n", cell(e.Head.Summary))
	}
	if e.Head.Jurisdiction != "" {
		p.line("For %s.\n", cell(e.Head.Jurisdiction))
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

// origin tells where a rule comes from, and who changed which part; nothing in a
// pack that extends none.
func origin(e *rules.Effective, r *rules.Compiled) string {
	if len(e.Head.Extends) == 0 {
		return ""
	}
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
	p.line("**%s.**", strings.TrimSuffix(cell(r.Title), "."))
	p.line("%s\n", strings.TrimSpace(weight(r)+" "+about))
	p.expressions(r)
	p.line("\nRemedy: %s.", strings.TrimSuffix(cell(filled(r.Remedy, e, r)), "."))
	if r.Caution != "" {
		p.line("\nCaution: %s.", strings.TrimSuffix(cell(r.Caution), "."))
	}
	p.basis("Basis", r.Basis)
	p.limits(e, r)
	p.samples(e.Shown(r))
}

// weight says how much a failed rule weighs, and from when.
func weight(r *rules.Compiled) string {
	text := string(r.Level)
	if r.OpenLevel != "" {
		text += ", " + string(r.OpenLevel) + " while an input is missing"
	}
	if r.Judge {
		text += ", for a person to judge"
	}
	return fmt.Sprintf("Weighs %s; due from stage %s.", text, r.Due)
}

var limitAlone = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\{limit\.([A-Za-z0-9_]+)\}`) })

// filled is a message with its limits in place of their names.
func filled(text string, e *rules.Effective, r *rules.Compiled) string {
	return limitAlone().ReplaceAllStringFunc(text, func(name string) string {
		return shown(e.Limits[limitAlone().FindStringSubmatch(name)[1]].Part, r.Topic, e)
	})
}

// expressions writes what the rule asks, as the pack says it.
func (p *page) expressions(r *rules.Compiled) {
	p.line("```")
	for _, each := range r.Each() {
		p.line("each %s of %s", each.Name, each.Collection)
	}
	for _, part := range [][2]string{{"when", r.When}, {"require", r.Require}, {"left to a person when", r.JudgeWhen}} {
		switch text := strings.TrimSpace(part[1]); {
		case text == "":
		case strings.Contains(text, "\n"):
			p.line("%s\n  %s", part[0], strings.ReplaceAll(text, "\n", "\n  "))
		default:
			p.line("%s %s", part[0], text)
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
	p.line("\n| figure | value | basis |\n|---|---|---|")
	for _, name := range r.LimitsUsed() {
		l := e.Limits[name]
		p.line("| `%s`%s | %s | %s |", name, of(l.Pack, e), shown(l.Part, r.Rule.Topic, e), sources(l.Part.Basis))
	}
	for _, name := range r.TablesUsed() {
		t := e.Tables[name]
		p.line("| [table `%s`](%s#table-%s)%s | %s | %s |", name, p.place(t.Pack), name, of(t.Pack, e), cell(t.Part.Title), sources(t.Part.Basis))
	}
}

// place is the page on which the tables of a pack stand, for a link.
func (p *page) place(pack string) string {
	if p.only == "" || p.only == pack {
		return ""
	}
	return pack + ".md"
}

// of names the pack of a figure; nothing in a pack that extends none.
func of(pack string, e *rules.Effective) string {
	if len(e.Head.Extends) == 0 {
		return ""
	}
	return fmt.Sprintf(" of `%s`", pack)
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
		if list := by[string(s.Expect)]; !slices.Contains(list, name) { // a pack may say again what its parent shows
			by[string(s.Expect)] = append(list, name)
		}
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
