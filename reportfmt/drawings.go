package reportfmt

import (
	"fmt"

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

// DrawDucts gives the duct trees of a design as one SVG file. It is empty where none
// can be drawn; why then tells what is missing.
func DrawDucts(d *design.Design) (svg string, why []string) {
	var shown []drawing.Drawing
	for _, picture := range drawing.DuctTrees(d) {
		if picture.SVG == "" {
			why = append(why, picture.Notes...)
		} else {
			shown = append(shown, picture)
		}
	}
	return Visible(drawing.Stack(shown)), why
}

// DrawFans gives the fan curves of a design against the losses of the ducts, as
// DrawDucts does the ducts: what keeps those from being drawn keeps these.
func DrawFans(d *design.Design) (svg string, why []string) {
	fans := drawing.Fans(d)
	if len(fans) == 0 {
		_, why = DrawDucts(d)
	}
	return Visible(drawing.Stack(fans)), why
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
