package facts

import (
	"errors"

	"github.com/ventlint/ventlint/checker/airflow"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// normal is the setting that the flows and curves of a ventilator itself are for.
const normal = "normal"

// at words what happens at a setting.
func at(setting string) string {
	if setting == normal {
		return ""
	}
	return " at " + setting
}

// settingNamed finds a setting of a unit; nil where the design does not give it.
func settingNamed(unit *design.Ventilator, name string) *design.Setting {
	for _, s := range unit.Settings() {
		if s.Name == name {
			return s.Setting
		}
	}
	return nil
}

// settings are the names of those that a design gives of a unit, the normal one
// first.
func settings(unit *design.Ventilator) []string {
	list := []string{normal}
	for _, s := range unit.Settings() {
		if s.Setting != nil {
			list = append(list, s.Name)
		}
	}
	return list
}

// fan gathers the curve of a side at a setting. A speed turns the normal curve into
// that of the setting; without a word of it no curve is guessed.
func fan(w *working, unit *design.Ventilator, s side, name string) func(airflow.Air) (turned, error) {
	setting := settingNamed(unit, name)
	points, speed := s.fan(unit.SupplyFan, unit.ExtractFan), q.Ratio(1)
	of := unit.Ref
	switch {
	case name == normal:
	case setting == nil:
		w.lack(document.Missing{Ref: unit.Ref, Key: name})
		return nil
	case setting.FanSpeed != nil:
		speed = given(w, "fan speed", setting.FanSpeed, setting.Ref, "fan_speed")
	default:
		points, of = s.fan(setting.SupplyFan, setting.ExtractFan), setting.Ref
	}
	if len(points) == 0 {
		w.lack(document.Missing{Ref: of, Key: s.name + "_fan"})
	}
	return func(air airflow.Air) (turned, error) { return curveOf(points, speed, air) }
}

// turned is a fan curve, stated for standard air, at a speed and in the air of the
// site.
type turned struct {
	airflow.Curve
	stated []design.FanPoint
	law    airflow.FanLaw
}

func curveOf(points []design.FanPoint, speed q.Ratio, air airflow.Air) (turned, error) {
	t := turned{stated: points}
	list := make([]airflow.Point, len(points))
	for i, p := range points {
		list[i] = airflow.Point{Flow: p.Flow, Pressure: p.Pressure}
	}
	rated, err := airflow.NewCurve(list...)
	if err != nil {
		return t, err
	}
	t.law, err = airflow.Density(airflow.StandardAir().Density, air.Density)
	if err != nil {
		return t, err
	}
	t.law.Speed = float64(speed)
	t.Curve, err = t.law.Curve(rated)
	return t, err
}

// listMeeting takes as inputs the line of the fan curve on which the fan works, and
// the losses of the critical path there.
func (f *Facts) listMeeting(w *working, c turned, o *airflow.Operation) {
	if !w.listing || o.Meeting != airflow.OnCurve {
		return
	}
	for i := 1; i < len(c.stated); i++ {
		a, b := c.stated[i-1], c.stated[i]
		if o.Flow >= c.law.Flow(a.Flow) && o.Flow <= c.law.Flow(b.Flow) {
			for _, p := range []design.FanPoint{a, b} {
				w.take(Input{"fan curve at " + q.Format(p.Flow, f.units()), p.Pressure, p.Ref, "pressure"})
			}
			break
		}
	}
	w.take(Input{Name: "density of the air, of that of the curve", Value: q.Ratio(c.law.Density)})
	f.list(w, o.Losses())
}

// asked is the flow of a side that a setting is meant to move, and where the design
// says it.
func (s side) asked(unit *design.Ventilator, name string) (*q.Flow, document.Ref) {
	if name == normal {
		return s.flow(unit.SupplyFlow, unit.ExtractFlow), unit.Ref
	}
	setting := settingNamed(unit, name)
	if setting == nil {
		return nil, unit.Ref
	}
	return s.flow(setting.SupplyFlow, setting.ExtractFlow), setting.Ref
}

var errShortOfCurve = errors.New("the fan curve ends below the flow asked for, where the ducts lose less than the fan makes")

// shortfall is by how much a fan stays under the flow of a setting.
func (f *Facts) shortfall(unit *design.Ventilator, s side, name string) result[q.Flow] {
	line := Line{Name: s.name + " side, shortfall of the fan" + at(name), Of: f.label(unit),
		Formula: "flow asked for - flow delivered, at least 0", Source: "difference"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		flow, ref := s.asked(unit, name)
		wanted := given(w, "flow asked for", flow, ref, s.name+"_flow")
		o := fromWhole(w, f.operation(unit, s, name))
		if o != nil {
			from(w, "flow delivered", f.delivered(unit, s, name))
		}
		return func() (q.Flow, error) {
			least, most := o.Shortfall(wanted)
			if least != most {
				return 0, errShortOfCurve
			}
			return most, nil
		}
	})
}

// fanLines are what the fan of a side does at every setting.
func (f *Facts) fanLines(unit *design.Ventilator, s side) []Line {
	var lines []Line
	for _, name := range settings(unit) {
		lines = append(lines, *f.delivered(unit, s, name).line)
		if asked, _ := s.asked(unit, name); asked != nil {
			lines = append(lines, *f.shortfall(unit, s, name).line)
		}
		lines = append(lines, *f.onCurve(unit, s, name).line)
	}
	return lines
}
