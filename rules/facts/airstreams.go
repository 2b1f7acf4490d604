package facts

import (
	"errors"
	"fmt"

	"github.com/ventlint/ventlint/checker/airflow"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// side is what one fan of a ventilator moves air through: from outdoors to the
// rooms, or from the rooms to outdoors.
type side struct {
	name    string
	streams []design.Airstream // in the direction of the air
	indoor  design.Airstream
	flow    func(supply, extract *q.Flow) *q.Flow
	fan     func(supply, extract []design.FanPoint) []design.FanPoint
}

var supplySide = side{"supply", []design.Airstream{"outdoor-air", "supply-air"}, "supply-air",
	func(supply, _ *q.Flow) *q.Flow { return supply },
	func(supply, _ []design.FanPoint) []design.FanPoint { return supply }}

var extractSide = side{"extract", []design.Airstream{"extract-air", "exhaust-air"}, "extract-air",
	func(_, extract *q.Flow) *q.Flow { return extract },
	func(_, extract []design.FanPoint) []design.FanPoint { return extract }}

// sides are those that a unit of a kind has.
func sides(unit *design.Ventilator) []side {
	switch unit.Kind {
	case "supply-fan":
		return []side{supplySide}
	case "exhaust-fan":
		return []side{extractSide}
	}
	return []side{supplySide, extractSide}
}

// system is the ducts of one side of a unit with the design flows of their ends.
type system struct {
	*airflow.System
	flows airflow.Flows
	air   airflow.Air
}

const (
	roomTemperature q.Temperature = 293.15
	lossSource                    = "Darcy-Weisbach with Colebrook, ASHRAE Fundamentals 2021 chapter 21; fittings by coefficient, hoods and terminals as stated"
)

// ducts builds the system of a side; its lines are those that use it.
func (f *Facts) ducts(unit *design.Ventilator, s side) result[system] {
	return compute(f, Line{Name: s.name + " ducts", Of: f.label(unit)}, func(w *working) func() (system, error) {
		l := &layout{facts: f, flows: airflow.Flows{}}
		moved := given(w, "flow", s.flow(unit.SupplyFlow, unit.ExtractFlow), unit.Ref, s.name+"_flow")
		for _, stream := range s.streams {
			if !l.add(stream, moved) {
				w.lack(document.Missing{Ref: f.Design.Ref, Key: "duct"})
			}
		}
		for _, m := range l.missing {
			w.lack(m)
		}
		w.trouble = l.trouble
		d := f.Design.Dwelling
		elevation := given(w, "elevation", d.Elevation, d.Ref, "elevation")
		return func() (system, error) {
			air, err := airflow.AirAt(elevation, roomTemperature)
			if err != nil {
				return system{}, err
			}
			built, err := airflow.NewSystem(air, unit.ID, l.runs, l.ends)
			return system{built, l.flows, air}, err
		}
	})
}

// atDesign is the losses of a side at its design flows, dampers set.
func (f *Facts) atDesign(unit *design.Ventilator, s side) result[*airflow.Losses] {
	line := Line{Name: s.name + " side at design", Of: f.label(unit), Source: lossSource}
	return compute(f, line, func(w *working) func() (*airflow.Losses, error) {
		built := fromWhole(w, f.ducts(unit, s))
		return func() (*airflow.Losses, error) {
			losses, err := built.Design(built.flows)
			if err != nil {
				return nil, f.worded(err)
			}
			f.list(w, losses)
			return losses, nil
		}
	})
}

// worded tells flows that do not agree in the units of the design.
func (f *Facts) worded(err error) error {
	var mismatch *airflow.FlowMismatch
	if !errors.As(err, &mismatch) {
		return err
	}
	return fmt.Errorf("%s has %s, and what is joined to it adds up to %s", mismatch.ID,
		q.Format(mismatch.Stated, f.units()), q.Format(mismatch.Found, f.units()))
}

// units are those of the design's reports.
func (f *Facts) units() q.System {
	if f.Design.Project.Units == "SI" {
		return q.SI
	}
	return q.IP
}

// list takes the parts of the critical paths as inputs of a line.
func (f *Facts) list(w *working, losses *airflow.Losses) {
	if !w.listing {
		return
	}
	for _, part := range []airflow.SideLoss{losses.Inlet, losses.Outlet} {
		for _, end := range part.Ends {
			if end.ID != part.Critical {
				continue
			}
			for _, run := range part.Runs {
				if contains(end.Path, run.ID) {
					name := fmt.Sprintf("duct %s, %s at %s", run.ID, q.Format(run.Flow, f.units()), q.Format(run.Sections[0].Velocity, f.units()))
					w.take(Input{Name: name, Value: run.Loss})
				}
			}
			w.take(Input{Name: end.ID, Value: end.Loss})
		}
	}
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

// indoorLoss is the part of the losses between the unit and the rooms.
func (s side) indoorLoss(l *airflow.Losses) airflow.SideLoss {
	if s.indoor == "supply-air" {
		return l.Outlet
	}
	return l.Inlet
}

func (f *Facts) externalLoss(unit *design.Ventilator, s side) result[q.Pressure] {
	line := Line{Name: s.name + " side, loss of the critical path at design flow", Of: f.label(unit),
		Formula: "hood and outdoor ducts + the costliest way to a terminal", Source: lossSource}
	return part(f, line, f.atDesign(unit, s), func(l *airflow.Losses) q.Pressure { return l.Pressure })
}

func (f *Facts) criticalEnd(unit *design.Ventilator, s side) result[string] {
	line := Line{Name: s.name + " side, critical path leads to", Of: f.label(unit), Formula: "the terminal whose way loses most", Source: lossSource}
	return compute(f, line, func(w *working) func() (string, error) {
		losses := fromWhole(w, f.atDesign(unit, s))
		return func() (string, error) {
			side := s.indoorLoss(losses)
			if w.listing {
				for _, end := range side.Ends {
					w.take(Input{Name: "way of " + end.ID, Value: end.Sum})
				}
			}
			return side.Critical, nil
		}
	})
}

// operation is where the fan of a side at a setting meets its ducts, dampers set for
// the proportions of the design.
func (f *Facts) operation(unit *design.Ventilator, s side, setting string) result[*airflow.Operation] {
	line := Line{Name: s.name + " fan at work" + at(setting), Of: f.label(unit), Source: lossSource}
	return compute(f, line, func(w *working) func() (*airflow.Operation, error) {
		built := fromWhole(w, f.ducts(unit, s))
		curve := fan(w, unit, s, setting)
		return func() (*airflow.Operation, error) {
			c, err := curve(built.air)
			if err != nil {
				return nil, err
			}
			met, err := built.MeetDamped(c.Curve, built.flows)
			if err == nil {
				f.listMeeting(w, c, met)
			}
			return met, f.worded(err)
		}
	})
}

// delivered is the flow at which the fan meets its ducts. Beyond the curve it is
// the curve's last flow, which the fan delivers at least.
func (f *Facts) delivered(unit *design.Ventilator, s side, setting string) result[q.Flow] {
	line := Line{Name: s.name + " side, flow that the fan delivers" + at(setting), Of: f.label(unit),
		Formula: "where the fan curve, by the fan laws for its speed and for the density of the air, meets the loss of the critical path", Source: lossSource}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		met := f.operation(unit, s, setting)
		o := fromWhole(w, met)
		w.line.Inputs = append(w.line.Inputs, met.line.Inputs...)
		return func() (q.Flow, error) {
			w.line.Note = string(o.Meeting)
			switch {
			case o.Meeting == airflow.OnCurve:
				w.take(Input{Name: "sum of these losses, and pressure of the fan there", Value: o.Pressure})
				return o.Flow, nil
			case o.Meeting == airflow.BeyondCurve:
				w.line.Note += ": at least this much"
				return o.Least, nil
			case o.Most == 0:
				return 0, nil
			}
			return 0, fmt.Errorf("the %s ducts of %s resist more than its fan curve%s tells of", s.name, f.label(unit), at(setting))
		}
	})
}

func (f *Facts) onCurve(unit *design.Ventilator, s side, setting string) result[bool] {
	line := Line{Name: s.name + " side, fan meets the ducts inside its curve" + at(setting), Of: f.label(unit), Formula: "least and largest flow of the curve", Source: lossSource}
	return compute(f, line, func(w *working) func() (bool, error) {
		o := fromWhole(w, f.operation(unit, s, setting))
		return func() (bool, error) {
			w.take(Input{Name: "meeting", Value: string(o.Meeting)})
			return o.Meeting == airflow.OnCurve, nil
		}
	})
}

// damperLoss is what the damper of a terminal must add so that every terminal
// gets its design flow.
func (f *Facts) damperLoss(terminal *design.Terminal) result[q.Pressure] {
	line := Line{Name: "loss of the balancing damper", Of: f.label(terminal), Formula: "critical path - this path", Source: lossSource}
	return compute(f, line, func(w *working) func() (q.Pressure, error) {
		var all []*airflow.Losses
		for _, unit := range f.Design.Ventilators {
			for _, s := range sides(unit) {
				if s.indoor == terminal.Airstream {
					if l := fromWhole(w, f.atDesign(unit, s)); l != nil {
						all = append(all, l)
					}
				}
			}
		}
		return func() (q.Pressure, error) {
			for _, losses := range all {
				if e, is := losses.End(terminal.ID); is {
					w.take(Input{Name: "this path", Value: e.Sum})
					return e.Damper, nil
				}
			}
			return 0, fmt.Errorf("no duct leads to %s", design.Label(terminal))
		}
	})
}

func (f *Facts) ductLines() []Line {
	var lines []Line
	if len(f.Design.Ventilators) > 0 {
		for _, duct := range f.Design.Ducts {
			lines = append(lines, *f.ductLoss(duct).line)
		}
	}
	for _, unit := range f.Design.Ventilators {
		for _, s := range sides(unit) {
			lines = append(lines, *f.externalLoss(unit, s).line, *f.criticalEnd(unit, s).line)
			lines = append(lines, f.fanLines(unit, s)...)
		}
	}
	for _, terminal := range f.Design.Terminals {
		lines = append(lines, *f.damperLoss(terminal).line, *f.openFlow(terminal).line)
	}
	return lines
}
