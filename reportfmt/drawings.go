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
