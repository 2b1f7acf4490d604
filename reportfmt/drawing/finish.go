package drawing

import (
	"fmt"
	"math"
	"strings"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// drawing ends a sheet: the scale bar and the legend below the picture, and around
// all of it the svg element with its title and description.
func (s *sheet) drawing(title, description string, units q.System, legend []sample) Drawing {
	picture := s.out.String()
	s.out.Reset()
	below := s.height + 16
	if !s.unscaled {
		s.scaleBar(units)
		below += legendRow
	}
	bottom := s.legend(legend, below)
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" width="%s" height="%s" role="img" aria-labelledby="%s-title %s-desc" font-family="Helvetica, Arial, sans-serif">`,
		num(sheetWidth), num(bottom), num(sheetWidth), num(bottom), s.key, s.key)
	fmt.Fprintf(&b, "\n<title id=\"%s-title\">%s</title>\n<desc id=\"%s-desc\">%s</desc>\n", s.key, escaped(title), s.key, escaped(description))
	fmt.Fprintf(&b, "<defs>\n<clipPath id=\"%s-clip\"><rect width=\"%s\" height=\"%s\"/></clipPath>\n", s.key, num(s.width), num(s.height))
	fmt.Fprintf(&b, `<pattern id="%s-hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="5" height="5" fill="#ffffff"/><path d="M0 0V5" stroke="%s" stroke-width="2.2"/></pattern>`, s.key, ink)
	fmt.Fprintf(&b, "\n"+`<pattern id="%s-dots" width="7" height="7" patternUnits="userSpaceOnUse"><rect width="7" height="7" fill="#ffffff"/><circle cx="2" cy="2" r="0.9" fill="#555555"/></pattern>`, s.key)
	fmt.Fprintf(&b, "\n</defs>\n<rect width=\"%s\" height=\"%s\" fill=\"#ffffff\"/>\n<g clip-path=\"url(#%s-clip)\">\n%s</g>\n%s</svg>\n",
		num(sheetWidth), num(bottom), s.key, picture, s.out.String())
	return Drawing{Key: s.key, Title: title, Text: description, SVG: b.String(), height: bottom}
}

// foot is 1 ft in metres, by definition.
const foot = 0.3048

// scaleBar draws a round length below the picture, about a sixth of its width.
func (s *sheet) scaleBar(units q.System) {
	unit := 1.0
	if units == q.IP {
		unit = foot
	}
	length := roundStep(s.width/6/s.scale/unit) * unit
	x, y := 10.0, s.height+16
	end := x + length*s.scale
	text := q.Format(q.Length(length), units)
	if units == q.SI {
		text = fmt.Sprintf("%g m", length)
	}
	s.put(`<g class="scale" data-length="%s"><title>scale bar of %s</title>`, num(length*1000), text)
	s.put(`<rect x="%s" y="%s" width="%s" height="5" fill="#ffffff" stroke="%s"/>`, num(x), num(y-3), num(end-x), ink)
	s.put(`<rect x="%s" y="%s" width="%s" height="5" fill="%s"/>`, num(x), num(y-3), num((end-x)/2), ink)
	s.text(spot{end + 8, y}, letters, ink, "", text)
	s.end()
}

// roundStep is the largest of 1, 2, 5, 10, ... that is not over the given one.
func roundStep(most float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(most)))
	switch {
	case most >= 5*power:
		return 5 * power
	case most >= 2*power:
		return 2 * power
	}
	return power
}

// sample is one entry of a legend.
type sample struct {
	text  string
	style string
	line  bool
}

// legend writes the samples in rows from a height on and gives the bottom of the
// sheet.
func (s *sheet) legend(samples []sample, y float64) float64 {
	x := legendSides
	for _, e := range samples {
		wide := 30 + textWidth(e.text, letters-1, "") + 14
		if x+wide > sheetWidth {
			x, y = legendSides, y+legendRow
		}
		if e.line {
			s.put(`<path d="M%s %sh26" fill="none" %s/>`, num(x), num(y), e.style)
		} else {
			s.put(`<rect x="%s" y="%s" width="18" height="11" %s/>`, num(x+4), num(y-5.5), e.style)
		}
		s.text(spot{x + 32, y}, letters-1, ink, "", e.text)
		x += wide
	}
	return y + legendRow/2 + 4
}
