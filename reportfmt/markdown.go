package reportfmt

import (
	"fmt"
	"io"
	"strings"

	"github.com/ventlint/ventlint/checker"
)

// markdownFormat writes a correction notice for each design, to be sent, posted
// beside a change, or turned into a letter: numbered items with what was found,
// what is asked and on what basis, open items apart, variances, and counts. It is
// CommonMark with tables.
type markdownFormat struct{}

func (markdownFormat) Name() string { return "markdown" }

func (markdownFormat) begin(s Setting, o Output) writer {
	return &markdownWriter{to: o.To, tool: s.Tool}
}

// markdownWriter writes one notice after the other.
type markdownWriter struct {
	to     io.Writer
	notice notice
	tool   Tool
}

func (w *markdownWriter) report(r *reviewed) error {
	w.notice.separate()
	w.notice.changes = r.changes
	w.notice.report(r.Report, w.tool)
	return w.notice.flush(w.to)
}

func (w *markdownWriter) failure(f Failure) error {
	w.notice.separate()
	w.notice.failure(f)
	return w.notice.flush(w.to)
}

func (w *markdownWriter) end() error {
	if !w.notice.begun {
		w.notice.block("**No design was reviewed.**")
	}
	return w.notice.flush(w.to)
}

// notice collects the blocks of a notice. What a design or a pack says reaches it
// through markdownText or markdownCode.
type notice struct {
	out     strings.Builder
	begun   bool // a block was written
	changes *changes
}

// flush hands over what was written.
func (n *notice) flush(to io.Writer) error {
	_, err := io.WriteString(to, n.out.String())
	n.out.Reset()
	return err
}

// block writes a paragraph, a heading, a list or a table.
func (n *notice) block(lines ...string) {
	if n.begun {
		n.out.WriteByte('\n')
	}
	n.begun = true
	for _, l := range lines {
		n.out.WriteString(strings.TrimRight(l, " ") + "\n")
	}
}

func (n *notice) separate() {
	if n.begun {
		n.block("---")
	}
}

func (n *notice) report(r *checker.Report, t Tool) {
	n.block("# Ventilation design review")
	n.head(r, t)
	groups := groupsOf(r)
	n.block(markdownText(summary(r, groups)))
	if text := n.changes.text(r); text != "" {
		n.block(text)
	}
	number := 0
	for _, g := range groups {
		number = n.group(g, r.File, number)
	}
	n.variances(r)
	n.list("Assumptions", "The design does not give these; the review took them.", assumptions(r))
	n.list("Stated distances used", "Taken from drawings in place of geometry.", statedDistances(r))
	n.list("No longer found", "Problems of the earlier review that this one does not have.", n.changes.farewells())
	n.list("Remarks", "What else a reader must know.", remarks(r))
	n.block("## Counts")
	n.block(countsText(r))
	n.block("_" + closing + "_")
}

func (n *notice) head(r *checker.Report, t Tool) {
	project := projectOf(r)
	lines := []string{"| | |", "| --- | --- |"}
	row := func(label, text string) { lines = append(lines, "| "+label+" | "+markdownText(oneLine(text))+" |") }
	row("Project", project.Name)
	row("Site", textOr(project.Site, "not stated"))
	row("Jurisdiction", textOr(project.Jurisdiction, "not stated"))
	row("Stage", string(project.Stage))
	row("Design file", r.File)
	row("Reviewed on", r.Date)
	row("Made with", joined(" ", t.Name, t.Version))
	for _, pack := range r.Packs {
		row("Rule pack", packText(pack))
	}
	n.block(lines...)
}

// group writes a chapter and returns the number of its last item.
func (n *notice) group(g group, file string, number int) int {
	if len(g.Results) == 0 {
		return number
	}
	n.block("## " + g.Title)
	n.block(g.Lead)
	for _, r := range g.Results {
		number++
		n.block(fmt.Sprintf("### %d. %s%s", number, markdownText(oneLine(r.Rule.Title)), n.changes.mark(r)))
		n.entry(file, r)
	}
	return number
}

func (n *notice) list(title, lead string, texts []string) {
	if len(texts) == 0 {
		return
	}
	n.block("## " + title)
	n.block(lead)
	n.block(each(texts, func(text string) string { return "- " + markdownText(oneLine(text)) })...)
}

// failure writes a notice for a file that could not be reviewed.
func (n *notice) failure(f Failure) {
	n.block("# Not reviewed")
	n.block("Design file: " + markdownText(oneLine(f.File)))
	n.block("This file could not be read as a design. Nothing in it was checked.")
	var lines []string
	for i, p := range f.problems() {
		lines = append(lines, fmt.Sprintf("%d. %s: %s", i+1, markdownText(oneLine(placeText(f.File, p.Position))), markdownText(mistake(p))))
	}
	n.block(lines...)
}
