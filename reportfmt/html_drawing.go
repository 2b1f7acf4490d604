package reportfmt

import (
	"html/template"
	"strings"

	"github.com/ventlint/ventlint/reportfmt/drawing"
)

// htmlDrawing is a drawing with its caption. The SVG escapes what a design says.
type htmlDrawing struct {
	ID, Title, Text string
	Notes           []string
	Findings        []htmlFound
	SVG             template.HTML
}

type htmlFound struct {
	ID     string
	Number int
}

func drawingAnchor(d drawing.Drawing) string { return d.Key + "-figure" }

func htmlDrawings(drawings []drawing.Drawing, anchor string) []htmlDrawing {
	var all []htmlDrawing
	for _, d := range drawings {
		made := htmlDrawing{ID: drawingAnchor(d), Title: upperFirst(d.Title), Text: d.Text, Notes: d.Notes, SVG: template.HTML(d.SVG)}
		for _, n := range d.Findings {
			made.Findings = append(made.Findings, htmlFound{findingAnchor(anchor, n), n})
		}
		all = append(all, made)
	}
	return all
}

func upperFirst(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
