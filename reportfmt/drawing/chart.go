package drawing

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/airflow"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Sizes of a chart, in pixels: the sheet, and the field of the chart in it.
const (
	chartHeight = 340.0
	fieldLeft   = 66.0
	fieldRight  = sheetWidth - 22
	fieldBottom = 46.0
	fieldTop    = chartHeight - 14
	steps       = 80 // of a curve that is computed
)

// chart shows pressures over flows.
type chart struct {
	*sheet
	units      q.System
	flow, loss axis
}

// axis is one side of a chart: from zero to the most, in SI, and the unit that it is read in.
type axis struct {
	most, unit float64
	name       string
}

func newChart(key string, units q.System, mostFlow q.Flow, mostPressure q.Pressure) *chart {
	c := &chart{sheet: newSheet(key, box{0, 0, sheetWidth, chartHeight}, chartHeight), units: units,
		flow: axis{float64(mostFlow), 1e-3, "flow in L/s"}, loss: axis{float64(mostPressure), 1, "pressure in Pa"}}
	if units == q.IP {
		c.flow.unit, c.flow.name = foot*foot*foot/60, "flow in cfm"
		c.loss.unit, c.loss.name = 0.0254*1000*9.80665, "pressure in inwc"
	}
	c.unscaled = true
	c.axes()
	return c
}

// at is where a flow and a pressure come to lie on the sheet.
func (c *chart) at(flow q.Flow, pressure q.Pressure) spot {
	return spot{fieldLeft + float64(flow)/c.flow.most*(fieldRight-fieldLeft),
		fieldBottom + float64(pressure)/c.loss.most*(fieldTop-fieldBottom)}
}

// axes draws the field with lines at round numbers.
func (c *chart) axes() {
	const grid = `stroke="#cccccc" stroke-width="0.8"`
	for _, v := range c.flow.ticks() {
		x := c.at(q.Flow(v*c.flow.unit), 0).x
		c.line(grid, spot{x, fieldBottom}, spot{x, fieldTop})
		c.tick(spot{x, fieldBottom - 11}, v, 0.5)
	}
	for _, v := range c.loss.ticks() {
		y := c.at(0, q.Pressure(v*c.loss.unit)).y
		c.line(grid, spot{fieldLeft, y}, spot{fieldRight, y})
		c.tick(spot{fieldLeft - 6, y}, v, 1)
	}
	c.edge(wallEdge, spot{fieldLeft, fieldTop}, spot{fieldLeft, fieldBottom})
	c.edge(wallEdge, spot{fieldLeft, fieldBottom}, spot{fieldRight, fieldBottom})
	c.labels.keep(box{0, chartHeight - fieldBottom, sheetWidth, chartHeight})
	c.labels.keep(box{0, 0, fieldLeft, chartHeight})
	c.plain(spot{(fieldLeft+fieldRight)/2 - textWidth(c.flow.name, letters, "")/2, chartHeight - 14}, letters, ink, "", c.flow.name)
	c.put(`<text transform="translate(14 %s) rotate(-90)" text-anchor="middle" font-size="%s" fill="%s">%s</text>`,
		num(chartHeight/2), num(letters), ink, c.loss.name)
}

// ticks are the round numbers of an axis, in its unit.
func (s axis) ticks() []float64 {
	most := s.most / s.unit
	step := roundStep(most / 5)
	var list []float64
	for n := 0; q.Compare(float64(n)*step, most) <= 0; n++ {
		list = append(list, float64(n)*step)
	}
	return list
}

// tick writes a number whose share of width lies left of a place.
func (c *chart) tick(at spot, v, share float64) {
	text := fmt.Sprintf("%.6g", v)
	p := c.px(at)
	c.plain(spot{p.x - share*textWidth(text, letters-1, ""), p.y}, letters-1, ink, "", text)
}

// curve draws a fan curve.
func (c *chart) curve(style string, points []airflow.Point) {
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		c.edge(style, c.at(a.Flow, a.Pressure), c.at(b.Flow, b.Pressure))
	}
}

// computed draws a pressure that rises with the flow, as far as the field reaches
// and the pressure is known.
func (c *chart) computed(style string, pressure func(q.Flow) (q.Pressure, error)) {
	var points []spot
	for n := range steps + 1 {
		flow := q.Flow(c.flow.most * float64(n) / steps)
		p, err := pressure(flow)
		if err != nil || float64(p) > c.loss.most {
			break
		}
		points = append(points, c.at(flow, p))
	}
	c.line(style, points...)
	for i := 1; i < len(points); i++ {
		c.labels.keepLine(c.px(points[i-1]), c.px(points[i]))
	}
}

// point marks a working point and names it.
func (c *chart) point(flow q.Flow, pressure q.Pressure, text string) {
	p := c.px(c.at(flow, pressure))
	c.put(`<circle cx="%s" cy="%s" r="4.5" fill="%s"/>`, num(p.x), num(p.y), ink)
	c.name(box{p.x, p.y, p.x, p.y}.grown(6), text, ink, bold)
}
