package reportfmt

import (
	_ "embed"
	"html/template"
	"io"
	"sync"

	"github.com/ventlint/ventlint/checker"
)

// htmlFormat writes one page that needs nothing beside it: the notice with its
// findings, the drawings that show them, the worksheet, and every rule with its
// outcome. It has no script and loads nothing. Its markup is also well-formed
// XML.
type htmlFormat struct{}

func (htmlFormat) Name() string { return "html" }

//go:embed html_page.tmpl
var htmlPage string

//go:embed html_style.css
var htmlStyle string

// htmlTemplate is parsed when the first page is written.
var htmlTemplate = sync.OnceValue(func() *template.Template { return template.Must(template.New("page").Parse(htmlPage)) })

func (htmlFormat) begin(s Setting, o Output) writer { return &htmlWriter{to: o.To, tool: s.Tool} }

// htmlWriter writes a page from top to bottom. Its title is that of the design
// where there is but one, so the first waits for what comes next.
type htmlWriter struct {
	to       io.Writer
	tool     Tool
	reports  int
	first    *htmlReport // that still waits
	headed   bool
	failures int
}

// htmlTop is the head of a page.
type htmlTop struct {
	Title string
	Style template.CSS
}

func (w *htmlWriter) report(r *reviewed) error {
	made := htmlReportOf(r, w.tool, w.reports)
	if w.reports++; w.reports == 1 {
		w.first = &made
		return nil
	}
	if err := w.head(); err != nil {
		return err
	}
	return w.part("report", &made)
}

func (w *htmlWriter) failure(f Failure) error {
	w.failures++
	if err := w.head(); err != nil {
		return err
	}
	failed := htmlFailureOf(f)
	return w.part("failure", &failed)
}

func (w *htmlWriter) end() error {
	if err := w.head(); err != nil {
		return err
	}
	if w.reports+w.failures == 0 {
		if err := w.part("empty", &struct{}{}); err != nil {
			return err
		}
	}
	return w.part("bottom", &struct{ Closing string }{closing})
}

// head writes the top of the page and the first design, once.
func (w *htmlWriter) head() error {
	if w.headed {
		return nil
	}
	w.headed = true
	top := htmlTop{"Ventilation design review", ""}
	if w.reports == 1 && w.failures == 0 {
		top.Title += ": " + w.first.Project
	}
	makeVisible(&top)
	top.Style = template.CSS(htmlStyle) // ours, not a design's
	err := htmlTemplate().ExecuteTemplate(w.to, "top", top)
	if first := w.first; err == nil && first != nil {
		w.first = nil
		err = w.part("report", first)
	}
	return err
}

func (w *htmlWriter) part(name string, what any) error {
	makeVisible(what)
	return htmlTemplate().ExecuteTemplate(w.to, name, what)
}

// htmlReport is one design. ID begins the anchors of its parts.
type htmlReport struct {
	ID, Project     string
	Head            []htmlPair
	Summary, Change string
	Loud            bool // nothing was checked
	Counts          []htmlPair
	Groups          []htmlGroup
	Variances       []htmlEntry
	Lists           []htmlList
	Drawings        []htmlDrawing
	Worksheet       []htmlSection
	Matrix          []htmlRuled
}

type htmlPair struct{ Label, Text string }

type htmlList struct {
	ID, Title, Lead string
	Texts           []string
}

type htmlFailure struct {
	File     string
	Problems []htmlProblem
}

type htmlProblem struct{ Where, Key, Message, Hint string }

func htmlFailureOf(f Failure) htmlFailure {
	failed := htmlFailure{File: oneLine(f.File)}
	for _, p := range f.problems() {
		failed.Problems = append(failed.Problems, htmlProblem{placeText(f.File, p.Position), p.Path, p.Message, p.Hint})
	}
	return failed
}

func htmlReportOf(reviewed *reviewed, t Tool, at int) htmlReport {
	r, c := reviewed.Report, reviewed.changes
	groups, drawings := groupsOf(r), drawingsOf(r, at)
	page := htmlReport{ID: reportAnchor(at), Project: oneLine(projectOf(r).Name), Head: htmlHead(r, t),
		Summary: summary(r, groups), Change: c.text(r), Loud: r.Count().Decided() == 0, Counts: htmlCounts(r)}
	e := entries{report: r, changes: c, anchor: page.ID, drawings: drawings}
	page.Groups = e.groups(groups)
	for _, accepted := range accepted(r) {
		page.Variances = append(page.Variances, e.entry(accepted, 0))
	}
	page.Lists = htmlLists(r, c, page.ID)
	page.Drawings = htmlDrawings(drawings, page.ID)
	page.Worksheet = htmlWorksheet(r)
	page.Matrix = e.matrix()
	return page
}

func htmlLists(r *checker.Report, c *changes, anchor string) []htmlList {
	all := []htmlList{
		{"computed", "Computed", "What the drawing hides; the worksheet below shows every step.", figures(r)},
		{"assumptions", "Assumptions", "The design does not give these; the review took them.", assumptions(r)},
		{"stated", "Stated distances used", "Taken from drawings in place of geometry.", statedDistances(r)},
		{"gone", "No longer found", "Problems of the earlier review that this one does not have.", c.farewells()},
		{"remarks", "Remarks", "What else a reader must know.", remarks(r)},
	}
	var kept []htmlList
	for _, l := range all {
		if len(l.Texts) > 0 {
			l.ID = anchor + l.ID
			kept = append(kept, l)
		}
	}
	return kept
}
