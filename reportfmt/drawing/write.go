package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// text writes a text whose left side has its middle at a pixel, on white.
func (s *sheet) text(at spot, size float64, colour, weight, text string) {
	s.put(`<rect x="%s" y="%s" width="%s" height="%s" fill="#ffffff" fill-opacity="0.8"/>`,
		num(at.x-1), num(at.y-size/2-1), num(textWidth(text, size, weight)+2), num(size+2))
	s.plain(at, size, colour, weight, text)
}

// plain writes a text like text, on what is there.
func (s *sheet) plain(at spot, size float64, colour, weight, text string) {
	s.put(`<text x="%s" y="%s" font-size="%s" fill="%s"%s>%s</text>`,
		num(at.x), num(at.y+size*0.35), num(size), colour, weight, escaped(text))
}

// name labels a thing beside it, with a leader where there was no room near.
func (s *sheet) name(beside box, text, colour, weight string) {
	wide := textWidth(text, letters-1, weight)
	at := s.labels.place(beside, wide, letters-1)
	end := box{at.x, at.y - 5, at.x + wide, at.y + 5}
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
	s.end()
	s.figured(fmt.Sprintf("[%d] %s, asked %s", dim.Number, found, dim.Required), from, to)
}

// figure is a text that stands beside one of the legs of a line.
type figure struct {
	text string
	legs []box // their middles
}

// figured keeps a line of pixels free and has its figures written later, when all
// such lines are known.
func (s *sheet) figured(text string, way ...spot) {
	f := figure{text: text}
	for i := range way[1:] {
		s.labels.keepLine(way[i], way[i+1])
		f.legs = append(f.legs, nowhere.with(middle(way[i], way[i+1])).grown(4))
	}
	s.figures = append(s.figures, f)
}

// writeFigures writes each beside the leg that has the best place for it.
func (s *sheet) writeFigures() {
	for _, f := range s.figures {
		best, least := nowhere, math.Inf(1)
		for _, leg := range f.legs {
			if _, against := s.labels.find(leg, textWidth(f.text, letters-1, bold), letters-1); against < least {
				best, least = leg, against
			}
		}
		s.name(best, f.text, redhead, bold)
	}
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
