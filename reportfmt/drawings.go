package reportfmt

import (
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/site"
	"github.com/ventlint/ventlint/reportfmt/drawing"
)

// Draw gives the elevation of a wall of a reviewed design, or its plan when wall
// is nil, as an SVG file with the findings under their numbers in the report. It
// is empty where the design places nothing.
func Draw(r *checker.Report, wall *design.Wall) string {
	s, marks := site.New(r.Design), drawing.Mark(r, numbered(r))
	if wall == nil {
		return Visible(drawing.Plan(r.Design, s, marks, "plan").SVG)
	}
	return Visible(drawing.Elevation(r.Design, s, wall, marks, "elevation").SVG)
}

// DrawAirways gives the duct trees of a design (what is "ducts") or the fan curves
// against the losses of the ducts ("fan") as one SVG file. It is empty where none can
// be drawn; why then tells what is missing.
func DrawAirways(d *design.Design, what string) (svg string, why []string) {
	var shown []drawing.Drawing
	for _, picture := range drawing.Airways(d, "") {
		switch {
		case picture.SVG == "":
			why = append(why, picture.Notes...)
		case strings.HasPrefix(picture.Key, what+"-"):
			shown = append(shown, picture)
		}
	}
	return Visible(drawing.Stack(shown)), why
}

// numbered lists the problems of a report under the numbers that a notice gives
// them.
func numbered(r *checker.Report) []drawing.Finding {
	var all []drawing.Finding
	for _, g := range groupsOf(r) {
		for _, result := range g.Results {
			all = append(all, drawing.Finding{Number: len(all) + 1, Result: result})
		}
	}
	return all
}

// drawingsOf gives the drawings of the report that stands at a place in a batch.
func drawingsOf(r *checker.Report, at int) []drawing.Drawing {
	return drawing.Of(r, numbered(r), fmt.Sprintf("r%d-", at+1))
}
