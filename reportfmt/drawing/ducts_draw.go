package drawing

import (
	"fmt"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Sizes of a duct tree, in pixels.
const (
	rowHeight  = 20.0
	headHeight = 26.0
	indent     = 15.0
	deepest    = 8  // levels that are indented
	mostRows   = 36 // on one sheet, so that it fits a printed page
)

// The columns of a duct tree, by their left edges.
var ductColumns = []struct {
	name string
	left float64
}{
	{"duct, opening or terminal", 8}, {"size", 236}, {"length", 308}, {"flow", 376}, {"velocity", 442}, {"loss", 510}, {"whole way", 584}, {"by damper", 660},
}

const (
	branchLine   = `stroke="#1a1a1a" stroke-width="1.2"`
	criticalLine = `stroke="#1a1a1a" stroke-width="4"`
	bandFill     = `fill="#f0ede4"`
)

// sheets draws all rows, on as many sheets as they need.
func (t *ductTree) sheets(key, title string) []Drawing {
	var all []Drawing
	count := (len(t.rows) + mostRows - 1) / mostRows
	for n := range count {
		name := title
		if count > 1 {
			name += fmt.Sprintf(", sheet %d of %d", n+1, count)
		}
		first := n * mostRows
		all = append(all, t.sheet(fmt.Sprintf("%s-%d", key, n+1), name, first, min(first+mostRows, len(t.rows))))
	}
	return all
}

// sheet draws some of the rows.
func (t *ductTree) sheet(key, title string, first, end int) Drawing {
	height := headHeight + rowHeight*float64(end-first)
	s := &ductSheet{newSheet(key, box{0, 0, sheetWidth, height}, height), first}
	s.unscaled = true
	for _, c := range ductColumns {
		s.plain(spot{c.left, headHeight / 2}, letters-1, ink, bold, c.name)
	}
	for _, heavy := range []bool{false, true} {
		for n := first; n < end; n++ {
			s.branch(n, t.rows[n], heavy)
		}
	}
	for n := first; n < end; n++ {
		s.cells(n, t.rows[n])
	}
	text := upperFirst(title) + ", " + q.Format(t.airway.Losses.Flow, t.units) + "." + t.said
	legend := []sample{{"critical path, which needs no damper", criticalLine, true}, {"other ways", branchLine, true}}
	return s.drawing(title, text, t.units, legend)
}

// ductSheet is a sheet of rows, which begin with the given one.
type ductSheet struct {
	*sheet
	first int
}

// middle is the height of a row's middle; a row of an earlier sheet lies at the top.
func (s *ductSheet) middle(row int) float64 {
	return headHeight + max(0, (float64(row-s.first)+0.5)*rowHeight)
}

// at is a point by pixels from the top left.
func (s *ductSheet) at(x, y float64) spot { return spot{x, s.view.y1 - y} }

// stem is where the line of a level goes down.
func stem(depth int) float64 { return ductColumns[0].left + indent*float64(min(depth, deepest)) }

// branch draws how a row hangs on its parent, or the band of a heading; the critical
// path comes later, so that it lies above the others.
func (s *ductSheet) branch(n int, row ductRow, heavy bool) {
	y := s.middle(n)
	if row.parent < 0 && !heavy {
		s.area(bandFill, s.at(0, y-rowHeight/2), s.at(sheetWidth, y-rowHeight/2), s.at(sheetWidth, y+rowHeight/2), s.at(0, y+rowHeight/2))
	}
	if row.parent < 0 || row.critical != heavy {
		return
	}
	style := branchLine
	if heavy {
		style = criticalLine
	}
	from := stem(row.depth-1) + 4
	s.line(style, s.at(from, s.middle(row.parent)+rowHeight/2), s.at(from, y), s.at(max(stem(row.depth)-2, from+6), y))
}

// cells writes a row.
func (s *ductSheet) cells(n int, row ductRow) {
	weight := ""
	if row.critical || row.parent < 0 {
		weight = bold
	}
	for i, text := range row.cells {
		at := spot{ductColumns[i].left, s.middle(n)}
		if i == 0 && row.parent >= 0 {
			at.x = stem(row.depth) + 2
			text = fitted(text, weight, ductColumns[1].left-at.x-4)
		}
		if text != "" {
			s.plain(at, letters-1, ink, weight, text)
		}
	}
}

// fitted cuts a text that is wider than its room, and says so by three dots.
func fitted(text, weight string, room float64) string {
	if textWidth(text, letters-1, weight) <= room {
		return text
	}
	letter := []rune(text)
	for len(letter) > 0 && textWidth(string(letter)+"...", letters-1, weight) > room {
		letter = letter[:len(letter)-1]
	}
	return string(letter) + "..."
}
