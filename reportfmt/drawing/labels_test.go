package drawing

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// writtenOf lists the texts of a drawing with the boxes that they take.
func writtenOf(t *testing.T, root element) (texts []string, boxes []box) {
	t.Helper()
	for _, e := range root.all(func(e element) bool { return e.XMLName.Local == "text" && e.get("transform") == "" }) {
		size, weight := e.number(t, "font-size"), ""
		if e.get("font-weight") != "" {
			weight = bold
		}
		x, y := e.number(t, "x"), e.number(t, "y")
		texts = append(texts, e.Text)
		boxes = append(boxes, box{x, y - size*0.75, x + textWidth(e.Text, size, weight), y + size*0.2})
	}
	return texts, boxes
}

// What is written in the drawings of the shipped designs can be read: no text
// covers another one or leaves the sheet.
func TestTextsOfShippedDesignsStandApart(t *testing.T) {
	seen := 0
	for _, name := range everyDesign(t) {
		d := shipped(t, name)
		r, findings := reviewed(t, d)
		for _, made := range Of(r, findings, "") {
			if made.SVG == "" {
				continue
			}
			texts, boxes := writtenOf(t, parse(t, made.SVG))
			for i, a := range boxes {
				require.True(t, a.x0 >= 0 && a.x1 <= sheetWidth && a.y0 >= 0 && a.y1 <= made.height, "%s, %s: %q leaves the sheet", name, made.Title, texts[i])
				for k, b := range boxes[:i] {
					require.Zero(t, overlap(a, b), "%s, %s: %q covers %q", name, made.Title, texts[i], texts[k])
				}
			}
			seen += len(texts)
		}
	}
	require.Greater(t, seen, 500)
}

// The widths of Helvetica as its metrics give them, in thousandths of the height of
// the type (from memory): d, e, s, i, g, n, space.
func TestTextWidths(t *testing.T) {
	require.InDelta(t, 0.556+0.556+0.5+0.222+0.556+0.556, textWidth("design", 1, ""), 0.06)
	require.InDelta(t, 0.722+0.222+0.556+0.556+0.556+0.722, textWidth("window", 1, ""), 0.06)
	require.InDelta(t, 4*0.556+0.278, textWidth("12 34", 1, ""), 0.06)
	require.Greater(t, textWidth("design", 1, bold), textWidth("design", 1, ""))
}
