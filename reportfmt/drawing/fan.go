package drawing

import (
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/airflow"
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/facts"
)

// Line styles of a fan chart.
var settingLines = map[string]string{
	"normal":  `stroke="#1a1a1a" stroke-width="2.6"`,
	"low":     `stroke="#1a1a1a" stroke-width="1.6" stroke-dasharray="2 4"`,
	"boost":   `stroke="#1a1a1a" stroke-width="1.6" stroke-dasharray="10 4"`,
	"maximum": `stroke="#1a1a1a" stroke-width="1.6" stroke-dasharray="12 3 2 3"`,
}

const (
	systemLine = `stroke="#0b4f8a" stroke-width="1.4"`
	askedLine  = `stroke="#0b4f8a" stroke-width="1.2" stroke-dasharray="5 5"`
)

// Fan draws the fan curves of one side of a ventilator against the loss of its ducts,
// with the points where they meet and the flow that the design asks for. Its SVG is
// empty where no fan curve is known.
func Fan(d *design.Design, a facts.Airway, key string) Drawing {
	if len(a.Settings) == 0 {
		return Drawing{}
	}
	f := &fan{airway: a, label: design.Label(a.Unit)}
	f.chart = newChart(key, unitsOf(d), f.mostFlow(), f.mostPressure())
	f.computed(systemLine, a.LossAt)
	for _, s := range a.Settings {
		f.curve(settingLines[s.Name], s.Curve.Points())
	}
	f.asked()
	for _, s := range a.Settings {
		f.met(s)
	}
	title := fmt.Sprintf("%s fan of %s against its ducts", a.Side, f.label)
	text := upperFirst(title) + ". " + strings.Join(f.said, ". ") + "."
	chart := f.drawing(title, text, f.units, f.legendOf())
	chart.Notes = f.notes
	return chart
}

// fan is the chart of one side of a ventilator.
type fan struct {
	*chart
	airway facts.Airway
	label  string
	said   []string
	notes  []string
}

// mostFlow is a little over every flow that the chart shows.
func (f *fan) mostFlow() q.Flow {
	most := f.airway.Asked
	for _, s := range f.airway.Settings {
		points := s.Curve.Points()
		most = max(most, points[len(points)-1].Flow)
	}
	return 1.05 * most
}

func (f *fan) mostPressure() q.Pressure {
	most := f.airway.Losses.Pressure
	for _, s := range f.airway.Settings {
		for _, p := range s.Curve.Points() {
			most = max(most, p.Pressure)
		}
	}
	return 1.08 * most
}

// asked draws the flow of the design at the normal setting, and what is short of it.
func (f *fan) asked() {
	wanted := f.airway.Asked
	f.edge(askedLine, f.at(wanted, 0), f.at(wanted, q.Pressure(f.loss.most)))
	foot := f.px(f.at(wanted, q.Pressure(f.loss.most)))
	f.name(nowhere.with(foot).grown(2), "asked "+q.Format(wanted, f.units), blue, "")
	f.said = append(f.said, "The design asks for "+q.Format(wanted, f.units))
	normal := f.airway.Settings[0]
	if normal.Name != "normal" || normal.Met == nil || normal.Met.Meeting != airflow.OnCurve || q.Compare(float64(normal.Met.Flow), float64(wanted)) >= 0 {
		return
	}
	a, b := f.at(normal.Met.Flow, normal.Met.Pressure), f.at(wanted, normal.Met.Pressure)
	f.edge(offending, a, b)
	short := "short by " + q.Format(wanted-normal.Met.Flow, f.units)
	f.name(nowhere.with(f.px(a), f.px(b)).grown(4), short, redhead, bold)
	f.said = append(f.said, "The fan stays "+short)
}

// met marks where the fan works at a setting, or tells why it is not shown.
func (f *fan) met(s facts.FanSetting) {
	switch {
	case s.Met == nil:
		f.notes = append(f.notes, "where the fan meets its ducts at "+s.Name+", which is not known")
	case s.Met.Meeting == airflow.OnCurve:
		at := q.Format(s.Met.Flow, f.units) + " at " + q.Format(s.Met.Pressure, f.units)
		f.point(s.Met.Flow, s.Met.Pressure, s.Name+": "+at)
		f.said = append(f.said, "At the setting "+s.Name+" it moves "+at)
	default:
		f.notes = append(f.notes, "a working point at "+s.Name+", which lies "+string(s.Met.Meeting))
	}
}

func (f *fan) legendOf() []sample {
	list := []sample{{"loss of the ducts", systemLine, true}, {"flow asked for", askedLine, true}}
	for _, s := range f.airway.Settings {
		list = append(list, sample{"fan at " + s.Name, settingLines[s.Name], true})
	}
	return list
}
