package drawing

import (
	"fmt"
	"slices"
	"strings"
)

// text writes a text whose left side has its middle at a pixel, on white.
func (s *sheet) text(at spot, size float64, colour, weight, text string) {
	s.put(`<rect x="%s" y="%s" width="%s" height="%s" fill="#ffffff" fill-opacity="0.8"/>`,
		num(at.x-1), num(at.y-size/2-1), num(textWidth(text, size)*0.95+1), num(size+2))
	s.plain(at, size, colour, weight, text)
}

// plain writes a text like text, on what is there.
func (s *sheet) plain(at spot, size float64, colour, weight, text string) {
	s.put(`<text x="%s" y="%s" font-size="%s" fill="%s"%s>%s</text>`,
		num(at.x), num(at.y+size*0.35), num(size), colour, weight, escaped(text))
}

// name labels a thing beside it, with a leader where there was no room near.
func (s *sheet) name(beside box, text, colour, weight string) {
	at := s.labels.place(beside, text, letters-1)
	end := box{at.x, at.y - 5, at.x + textWidth(text, letters-1), at.y + 5}
	from := beside.nearest(spot{(end.x0 + end.x1) / 2, at.y})
	if to := end.nearest(from); from.to(to).length() > 12 {
		s.put(`<path d="M%s %sL%s %s" fill="none" %s/>`, num(from.x), num(from.y), num(to.x), num(to.y), leaderLine)
	}
	s.text(at, letters-1, colour, weight, text)
}

const bold = ` font-weight="700"`

// dimension draws a distance between two points with its figures. Where the
// points are one, the figures alone stand there.
func (s *sheet) dimension(dim Dimension, a, b spot, found string) {
	from, to := s.px(a), s.px(b)
	s.put(`<g class="dimension" data-finding="%d"><title>%s</title>`, dim.Number, escaped(dim.words(found)))
	s.put(`<path d="M%s %sL%s %s" fill="none" %s/>`, num(from.x), num(from.y), num(to.x), num(to.y), offending)
	for _, p := range []spot{from, to} {
		s.put(`<circle cx="%s" cy="%s" r="3.4" fill="#ffffff" %s/>`, num(p.x), num(p.y), offending)
	}
	s.labels.keepLine(from, to)
	m := middle(from, to)
	s.name(nowhere.with(m).grown(4), fmt.Sprintf("[%d] %s, asked %s", dim.Number, found, dim.Required), redhead, bold)
	s.end()
}

func (d Dimension) words(found string) string {
	return fmt.Sprintf("finding %d: found %s, asked at least %s", d.Number, found, d.Required)
}

// tags writes the numbers of findings at a thing.
func (s *sheet) tags(beside box, numbers []int) {
	if len(numbers) == 0 {
		return
	}
	slices.Sort(numbers)
	var words []string
	for _, n := range numbers {
		words = append(words, fmt.Sprint(n))
	}
	text := "[" + strings.Join(words, ", ") + "]"
	s.put(`<g class="tag"><title>findings %s</title>`, strings.Join(words, ", "))
	s.name(beside, text, redhead, bold)
	s.end()
}
