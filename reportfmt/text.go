package reportfmt

import (
	"fmt"
	"io"
	"strings"

	"github.com/fatih/color"

	"github.com/ventlint/ventlint/checker"
)

// textFormat writes a correction notice for each design, as a plan reviewer
// would send it to the designer: what was reviewed, numbered items, what was
// accepted and assumed, counts, and what the review is worth.
type textFormat struct{}

func (textFormat) Name() string { return "text" }

func (textFormat) begin(s Setting, o Output) writer {
	return &textWriter{o.To, newPage(o.Options), s.Tool, 0}
}

// textWriter writes one notice after the other.
type textWriter struct {
	to      io.Writer
	page    *page
	tool    Tool
	notices int
}

func (w *textWriter) report(r *reviewed) error {
	w.separate()
	w.page.changes = r.changes
	w.page.report(r.Report, w.tool)
	return w.page.flush(w.to)
}

func (w *textWriter) failure(f Failure) error {
	w.separate()
	w.page.failure(f)
	return w.page.flush(w.to)
}

func (w *textWriter) end() error {
	if w.notices == 0 {
		w.page.prose(0, strong, "No design was reviewed.")
	}
	return w.page.flush(w.to)
}

// separate keeps notices apart, each fit to be torn off.
func (w *textWriter) separate() {
	if w.notices++; w.notices > 1 {
		w.page.blank()
		w.page.prose(0, subdued, strings.Repeat(". ", w.page.width/2))
		w.page.blank()
	}
}

func (p *page) report(r *checker.Report, t Tool) {
	p.head(r, t)
	groups := groupsOf(r)
	p.blank()
	p.summary(r, groups)
	number := 0
	for i, g := range groups {
		number = p.group(g, groupStyles[i], r.File, number)
	}
	p.list("Computed", "What the drawing hides; \"ventlint worksheet\" shows every step.", figures(r))
	p.variances(r)
	p.list("Assumptions", "The design does not give these; the review took them.", assumptions(r))
	p.list("Stated distances used", "Taken from drawings in place of geometry.", statedDistances(r))
	p.list("No longer found", "Problems of the earlier review that this one does not have.", p.changes.farewells())
	p.list("Remarks", "What else a reader must know.", remarks(r))
	p.chapter("Counts", "")
	p.prose(0, plain, countsText(r))
	p.blank()
	p.prose(0, subdued, closing)
}

func (p *page) head(r *checker.Report, t Tool) {
	project := projectOf(r)
	p.prose(0, strong, "Ventilation design review")
	p.blank()
	p.heading("Project", project.Name)
	p.heading("Site", textOr(project.Site, "not stated"))
	p.heading("Jurisdiction", textOr(project.Jurisdiction, "not stated"))
	p.heading("Stage", string(project.Stage))
	p.heading("Design file", r.File)
	p.heading("Reviewed on", r.Date)
	p.heading("Made with", joined(" ", t.Name, t.Version))
	label := "Rule packs"
	for _, pack := range r.Packs {
		p.heading(label, packText(pack))
		label = ""
	}
}

// packText is "irc-2021: International Residential Code, edition 2021".
func packText(u checker.PackUsed) string {
	text := joined(": ", u.ID, u.Title)
	if u.Edition != "" {
		text += ", edition " + u.Edition
	}
	return text
}

// summary says in one sentence what a reader will find, and never that all is
// well when nothing was checked.
func summary(r *checker.Report, groups []group) string {
	var found []string
	for _, g := range groups {
		if n := len(g.Results); n > 0 {
			found = append(found, plural(n, g.One, g.Many))
		}
	}
	switch {
	case r.Count().Decided() == 0:
		return strings.ToUpper(nothingChecked[:1]) + nothingChecked[1:] + ". This is not an approval."
	case len(found) == 0:
		return fmt.Sprintf("Nothing to correct, to add or to judge in %s.", plural(r.Count().Decided(), "check", "checks"))
	}
	return "This review lists " + enumerated(found) + "."
}

func (p *page) summary(r *checker.Report, groups []group) {
	s := plain
	if r.Count().Decided() == 0 {
		s = strong
	}
	p.prose(0, s, summary(r, groups))
	if text := p.changes.text(r); text != "" {
		p.prose(0, plain, text)
	}
}

// enumerated gives "a, b and c".
func enumerated(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

var groupStyles = []style{
	corrections: {color.FgRed, color.Bold},
	openItems:   {color.FgBlue, color.Bold},
	toBeJudged:  {color.FgMagenta, color.Bold},
	advisories:  {color.FgYellow, color.Bold},
	notes:       {color.FgCyan, color.Bold},
}

// group writes a chapter and returns the number of its last item.
func (p *page) group(g group, s style, file string, number int) int {
	if len(g.Results) == 0 {
		return number
	}
	p.chapter(g.Title, g.Lead)
	for _, r := range g.Results {
		number++
		p.blank()
		p.entry(fmt.Sprint(number), s, file, r)
	}
	return number
}

func (p *page) chapter(title, lead string) {
	p.blank()
	p.blank()
	p.prose(0, strong, strings.ToUpper(title))
	if lead != "" {
		p.prose(0, plain, lead)
	}
}

// list writes a chapter of short remarks; nothing when there are none.
func (p *page) list(title, lead string, remarks []string) {
	if len(remarks) == 0 {
		return
	}
	p.chapter(title, lead)
	p.blank()
	for _, text := range remarks {
		p.hang("   *  ", plain, plain, text)
	}
}

// assumptions gives each assumption with its basis.
func assumptions(r *checker.Report) []string {
	var all []string
	for _, a := range r.Assumptions {
		text := a.Text
		if a.Basis != "" {
			text += " (basis: " + a.Basis + ")"
		}
		all = append(all, text)
	}
	return all
}

// remarks gives each remark with the line of the design that it is about.
func remarks(r *checker.Report) []string {
	var all []string
	for _, remark := range r.Remarks {
		all = append(all, fmt.Sprintf("%s (line %d)", remark.Text, remark.Position.Line))
	}
	return all
}

// figures gives each computed value with what it is of.
func figures(r *checker.Report) []string {
	var all []string
	for _, f := range r.Figures {
		all = append(all, joined(", ", f.Name, f.Of)+": "+f.Value)
	}
	return all
}
