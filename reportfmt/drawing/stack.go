package drawing

import (
	"fmt"
	"strings"
)

// Stack gives drawings below each other as one SVG file; it is empty without any.
func Stack(drawings []Drawing) string {
	if len(drawings) == 1 {
		return drawings[0].SVG
	}
	var b strings.Builder
	below := 0.0
	for _, d := range drawings {
		fmt.Fprintf(&b, "<g transform=\"translate(0 %s)\">\n<text x=\"8\" y=\"20\" font-size=\"14\" font-weight=\"700\" font-family=\"Helvetica, Arial, sans-serif\" fill=\"%s\">%s</text>\n<g transform=\"translate(0 30)\">\n%s</g>\n</g>\n",
			num(below), ink, escaped(upperFirst(d.Title)), d.SVG)
		below += d.height + 40
	}
	if below == 0 {
		return ""
	}
	return fmt.Sprintf("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %s %s\" width=\"%s\" height=\"%s\">\n<rect width=\"%s\" height=\"%s\" fill=\"#ffffff\"/>\n%s</svg>\n",
		num(sheetWidth), num(below), num(sheetWidth), num(below), num(sheetWidth), num(below), b.String())
}
