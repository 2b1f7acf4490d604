package drawing

import (
	"iter"
	"math"
	"slices"
	"strings"
	"unicode"
)

// labels finds room for texts on a sheet, in pixels.
type labels struct {
	page  box
	taken []box
	cells map[cell][]int // those of taken that touch each, in order
	found int            // places that were looked for
}

// mostFound is how many places are looked for. A sheet with more texts is full, and
// the others stand above what they name.
const mostFound = 500

// textWidth estimates how wide a text is in a plain typeface without serifs, of a
// weight: bold or none.
func textWidth(text string, size float64, weight string) float64 {
	sum := 0.0
	for _, r := range text {
		sum += letterWidth(r)
	}
	if weight == bold {
		sum *= boldWidth
	}
	return sum * size
}

// boldWidth is how much wider bold letters are, about.
const boldWidth = 1.07

// letterWidth is the width of a letter, in the height of the type: as they are in
// Helvetica (from memory), or of East Asian letters.
func letterWidth(r rune) float64 {
	switch {
	case strings.ContainsRune("ijl'|", r):
		return 0.23
	case strings.ContainsRune(" .,:;!ftI[]/", r):
		return 0.28
	case strings.ContainsRune("r()-", r):
		return 0.34
	case strings.ContainsRune("cksvxyzJ", r):
		return 0.5
	case strings.ContainsRune("mMW%@", r):
		return 0.88
	case r >= 0x2E80:
		return 1
	case r == 'w' || unicode.IsUpper(r):
		return 0.72
	}
	return 0.56
}

// keep marks a place as taken by what is drawn there.
func (l *labels) keep(b box) {
	if l.cells == nil {
		l.cells = map[cell][]int{}
	}
	for c := range cellsOf(b) {
		if in := l.cells[c]; len(in) < mostInCell {
			l.cells[c] = append(in, len(l.taken))
		}
	}
	l.taken = append(l.taken, b)
}

// keepLine marks the places along a line as taken.
func (l *labels) keepLine(a, b spot) {
	steps := int(math.Ceil(a.to(b).length() / 8))
	for i := range steps + 1 {
		p := a.plus(float64(i)/float64(max(steps, 1)), a.to(b))
		l.keep(box{p.x, p.y, p.x, p.y}.grown(3))
	}
}

// apart is what is kept free on the left and right of a text, in pixels.
const apart = 3.0

// place takes the best place for a text beside a box. It gives the middle of the
// text's left side.
func (l *labels) place(beside box, wide, size float64) spot {
	best, _ := l.find(beside, wide, size)
	l.keep(best)
	return spot{best.x0 + apart, (best.y0 + best.y1) / 2}
}

// find gives the least crowded place for a text beside a box, the nearest first,
// and what speaks against it.
func (l *labels) find(beside box, wide, size float64) (box, float64) {
	w, h := wide+2*apart, size+3
	if l.found++; l.found > mostFound {
		best := around(beside, w, h)[0]
		return best, area(best)
	}
	best, least := box{}, math.Inf(1)
	for _, gap := range []float64{4, 14, 28, 44, 64, 90, 120} {
		for _, b := range around(beside.grown(gap), w, h) {
			if crowd := l.crowd(b) + gap*gap/50; crowd < least {
				best, least = b, crowd
			}
		}
	}
	return best, least
}

// around lists boxes of a size just outside another one: right, left, above,
// below, then the corners.
func around(b box, w, h float64) []box {
	cx, cy := (b.x0+b.x1)/2, (b.y0+b.y1)/2
	at := func(x, y float64) box { return box{x, y, x + w, y + h} }
	return []box{
		at(cx-w/2, b.y0-h), at(cx-w/2, b.y1), at(b.x1, cy-h/2), at(b.x0-w, cy-h/2),
		at(b.x1, b.y0-h), at(b.x0-w, b.y0-h), at(b.x1, b.y1), at(b.x0-w, b.y1),
		at(b.x0, b.y0-h), at(b.x1-w, b.y0-h), at(b.x0, b.y1), at(b.x1-w, b.y1),
	}
}

// crowd is how much a box covers of what is there, in square pixels; what leaves
// the page counts most.
func (l *labels) crowd(b box) float64 {
	var near []int
	for c := range cellsOf(b) {
		near = append(near, l.cells[c]...)
	}
	slices.Sort(near)
	sum := 0.0
	for _, i := range slices.Compact(near) {
		sum += overlap(b, l.taken[i])
	}
	return sum + 20*(area(b)-overlap(b, l.page))
}

func overlap(a, b box) float64 {
	return max(0, min(a.x1, b.x1)-max(a.x0, b.x0)) * max(0, min(a.y1, b.y1)-max(a.y0, b.y0))
}

func area(b box) float64 { return (b.x1 - b.x0) * (b.y1 - b.y0) }

// cell is a square of the sheet. Those at the rim of the sheet hold all that lies
// beyond.
type cell struct{ column, row int }

const (
	cellSide   = 32  // pixels
	lastCells  = 64  // of a row or column
	mostInCell = 100 // where more lies, there is no room anyway
)

// cellsOf are the cells that a box touches.
func cellsOf(b box) iter.Seq[cell] {
	at := func(x float64) int { return int(min(max(math.Floor(x/cellSide), -1), lastCells)) }
	return func(yield func(cell) bool) {
		for column := at(b.x0); column <= at(b.x1); column++ {
			for row := at(b.y0); row <= at(b.y1); row++ {
				if !yield(cell{column, row}) {
					return
				}
			}
		}
	}
}
