package reportfmt

import (
	_ "embed"
	"html/template"
	"io"
	"strings"
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

func (htmlFormat) Write(w io.Writer, b Batch) error {
	page := htmlDocument{Closing: closing, Empty: b.empty()}
	changes := b.changes()
	for i, r := range b.Reports {
		page.Reports = append(page.Reports, htmlReportOf(r, b.Tool, changes, i))
	}
	for _, f := range b.Failures {
		page.Failures = append(page.Failures, htmlFailureOf(f))
	}
	page.Title = htmlTitle(b)
	makeVisible(&page)
	page.Style = template.CSS(htmlStyle) // ours, not a design's
	var out strings.Builder
	if err := htmlTemplate().Execute(&out, page); err != nil {
		return err
	}
	_, err := io.WriteString(w, out.String())
	return err
}

func htmlTitle(b Batch) string {
	if len(b.Reports) == 1 && len(b.Failures) == 0 {
		return "Ventilation design review: " + oneLine(projectOf(b.Reports[0]).Name)
	}
	return "Ventilation design review"
}

// htmlDocument is the page as the template needs it.
type htmlDocument struct {
	Title, Closing string
	Style          template.CSS
	Empty          bool
	Reports        []htmlReport
	Failures       []htmlFailure
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

func htmlReportOf(r *checker.Report, t Tool, c *changes, at int) htmlReport {
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
		{"gone", "No longer found", "Problems of the earlier review that this one does not have.", c.farewells(r)},
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
