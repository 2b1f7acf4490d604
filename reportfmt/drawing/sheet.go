package drawing

import (
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Sizes of a sheet, in pixels. A sheet as wide as this fits the printable width
// of A4 and Letter with letters that can be read.
const (
	sheetWidth  = 740.0
	letters     = 12.0
	legendRow   = 22.0
	legendSides = 8.0
)

// sheet collects the elements of a drawing. All of a design's text reaches it
// through text or title, which escape it.
type sheet struct {
	key    string
	view   box     // what part of the wall or plan it shows, in metres
	scale  float64 // pixels for a metre
	width  float64 // of the picture, without the legend
	height float64
	out    strings.Builder
	labels labels
	titles []string // of the elements drawn, for the description

	figures []figure // of lines that are drawn
	reaches []reach  // that are drawn and await their labels

	unscaled bool // nothing on it is a length, so that it needs no scale bar
}

// reach is a clearance around an outline.
type reach struct {
	clearance Clearance
	outline   outline
}

// newSheet fits a view into the width of a sheet and a height, at a round scale.
func newSheet(key string, view box, tallest float64) *sheet {
	w, h := view.x1-view.x0, view.y1-view.y0
	scale := roundScale(min(sheetWidth/w, tallest/h))
	s := &sheet{key: key, scale: scale, width: sheetWidth, height: math.Ceil(h * scale)}
	extra := (sheetWidth/scale - w) / 2
	s.view = box{view.x0 - extra, view.y0, view.x1 + extra, view.y1}
	s.labels.page = box{0, 0, s.width, s.height}
	return s
}

// roundScale is the largest number of pixels for a metre of the series 1, 1.5,
// 2, ... 9.5, times a power of ten, that is not over the given one.
func roundScale(most float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(most)))
	return math.Floor(most/power*2) / 2 * power
}

// px is where a point comes to lie.
func (s *sheet) px(p spot) spot {
	return spot{(p.x - s.view.x0) * s.scale, (s.view.y1 - p.y) * s.scale}
}

// num prints a coordinate to a hundredth of a pixel, without trailing zeros.
func num(v float64) string {
	r := math.Round(v*100) / 100
	if r == 0 {
		r = 0
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}

func (s *sheet) put(format string, args ...any) { fmt.Fprintf(&s.out, format+"\n", args...) }

func escaped(text string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(text)) //nolint:errcheck // a builder takes everything
	return b.String()
}

// path gives the data of a path through points, closed or not.
func (s *sheet) path(closed bool, points ...spot) string {
	var b strings.Builder
	for i, p := range points {
		at := s.px(p)
		fmt.Fprintf(&b, "%c%s %s", "ML"[min(i, 1)], num(at.x), num(at.y))
	}
	if closed {
		b.WriteByte('Z')
	}
	return b.String()
}

func (s *sheet) line(style string, points ...spot) {
	s.put(`<path d="%s" fill="none" %s/>`, s.path(false, points...), style)
}

// edge is a line that labels keep off.
func (s *sheet) edge(style string, a, b spot) {
	s.line(style, a, b)
	s.labels.keepLine(s.px(a), s.px(b))
}

func (s *sheet) area(style string, points ...spot) {
	s.put(`<path d="%s" %s/>`, s.path(true, points...), style)
}

// shape draws an outline grown by a distance on all sides, round at the corners.
func (s *sheet) shape(o outline, by float64, style string) {
	switch {
	case o.line:
		s.put(`<path d="%s" %s/>`, s.capsule(o.a, o.b, by), style)
	case o.round:
		at := s.px(o.centre)
		s.put(`<circle cx="%s" cy="%s" r="%s" %s/>`, num(at.x), num(at.y), num((o.w/2+by)*s.scale), style)
	default:
		b := o.bounds().grown(by)
		at := s.px(spot{b.x0, b.y1})
		s.put(`<rect x="%s" y="%s" width="%s" height="%s" rx="%s" %s/>`,
			num(at.x), num(at.y), num((b.x1-b.x0)*s.scale), num((b.y1-b.y0)*s.scale), num(by*s.scale), style)
	}
}

// capsule is all that is within a distance of a straight line.
func (s *sheet) capsule(a, b spot, by float64) string {
	along := a.to(b).unit()
	side := spot{-along.y, along.x}
	r := num(by * s.scale)
	from := func(p spot) string { at := s.px(p); return num(at.x) + " " + num(at.y) }
	return fmt.Sprintf("M%s L%s A%s %s 0 0 1 %s L%s A%s %s 0 0 1 %sZ",
		from(a.plus(by, side)), from(b.plus(by, side)), r, r,
		from(b.plus(-by, side)), from(a.plus(-by, side)), r, r, from(a.plus(by, side)))
}

// group opens an element that bears a title; the caller closes it with end.
func (s *sheet) group(class, id, title string) {
	attribute := ""
	if id != "" {
		attribute = fmt.Sprintf(` data-id="%s"`, escaped(id))
	}
	s.put(`<g class="%s"%s><title>%s</title>`, class, attribute, escaped(title))
}

func (s *sheet) end() { s.put("</g>") }
