package facts

import (
	"slices"

	"github.com/ventlint/ventlint/checker/airflow"
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Airway is what one fan of a ventilator moves air through, as a drawing shows it.
type Airway struct {
	Unit     *design.Ventilator
	Side     string          // supply or extract
	Losses   *airflow.Losses // at the flows of the design, dampers set; nil where they are not known
	Why      error           // what keeps the losses from being known
	Asked    q.Flow          // of the fan at the normal setting
	Settings []FanSetting    // those whose fan curve is known, the normal one first
	damped   func(total q.Flow) (*airflow.Losses, error)
}

// FanSetting is a fan at one of its settings, in the air of the site.
type FanSetting struct {
	Name  string
	Curve airflow.Curve
	Met   *airflow.Operation // where it meets the ducts; nil where that is not known
}

// Airways lists the sides of all ventilators that ducts are given of, in the order of
// the design.
func (f *Facts) Airways() []Airway {
	var all []Airway
	for _, unit := range f.Design.Ventilators {
		for _, s := range sides(unit) {
			if !f.ducted(s) {
				continue
			}
			losses, err := f.atDesign(unit, s).get()
			if err != nil {
				all = append(all, Airway{Unit: unit, Side: s.name, Why: err})
				continue
			}
			all = append(all, f.airway(unit, s, losses))
		}
	}
	return all
}

// ducted tells whether any duct of a side is given.
func (f *Facts) ducted(s side) bool {
	return slices.ContainsFunc(f.Design.Ducts, func(d *design.Duct) bool { return slices.Contains(s.streams, d.Airstream) })
}

func (f *Facts) airway(unit *design.Ventilator, s side, losses *airflow.Losses) Airway {
	built, _ := f.ducts(unit, s).get() //nolint:errcheck // without it, there were no losses
	a := Airway{Unit: unit, Side: s.name, Losses: losses, Asked: losses.Flow,
		damped: func(total q.Flow) (*airflow.Losses, error) { return built.Damped(built.flows, total) }}
	for _, name := range settings(unit) {
		curve, err := f.fanCurve(unit, s, name, built.air).get()
		if err != nil {
			continue
		}
		met, _ := f.operation(unit, s, name).get() //nolint:errcheck // nil tells that it is not known
		a.Settings = append(a.Settings, FanSetting{name, curve.Curve, met})
	}
	return a
}

// fanCurve is the curve of a side at a setting in the air of the site.
func (f *Facts) fanCurve(unit *design.Ventilator, s side, name string, air airflow.Air) result[turned] {
	return compute(f, Line{Name: s.name + " fan curve" + at(name), Of: f.label(unit)}, func(w *working) func() (turned, error) {
		curve := fan(w, unit, s, name)
		return func() (turned, error) { return curve(air) }
	})
}

// LossAt is the loss of the critical path when the fan moves a total flow, with
// dampers that keep the proportions of the design.
func (a Airway) LossAt(total q.Flow) (q.Pressure, error) {
	losses, err := a.damped(total)
	if err != nil {
		return 0, err
	}
	return losses.Pressure, nil
}
