package facts

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/airflow"
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// ductLoss is what a duct loses at its design flow, with every figure on the way.
func (f *Facts) ductLoss(duct *design.Duct) result[q.Pressure] {
	line := Line{Name: "loss at design flow", Of: f.label(duct),
		Formula: "(f x k x L + f x Le) / D x pv + C x pv + extra, pv = rho x v^2 / 2", Source: lossSource}
	return compute(f, line, func(w *working) func() (q.Pressure, error) {
		var all []*airflow.Losses
		for _, unit := range f.Design.Ventilators {
			for _, s := range sides(unit) {
				if s.has(duct.Airstream) {
					all = append(all, fromWhole(w, f.atDesign(unit, s)))
				}
			}
		}
		return func() (q.Pressure, error) {
			for _, losses := range all {
				if run, is := losses.Run(duct.ID); is {
					f.listRun(w, duct, run)
					return run.Loss, nil
				}
			}
			return 0, fmt.Errorf("%s belongs to no ventilator", design.Label(duct))
		}
	})
}

// has tells whether a side moves an airstream.
func (s side) has(stream design.Airstream) bool {
	for _, one := range s.streams {
		if one == stream {
			return true
		}
	}
	return false
}

// listRun takes the figures of a duct of one section as inputs.
func (f *Facts) listRun(w *working, duct *design.Duct, run airflow.RunLoss) {
	s := run.Sections[0]
	w.take(Input{Name: "flow", Value: run.Flow})
	w.take(Input{Name: "v", Value: s.Velocity})
	w.take(Input{Name: "pv", Value: s.VelocityPressure})
	w.take(Input{Name: "f", Value: s.Friction.Factor})
	if s.Compression.Factor != 1 {
		w.take(Input{Name: "k, for compression", Value: s.Compression.Factor, Ref: duct.Ref, Key: "compression"})
	}
	w.take(Input{Name: "L", Value: s.Length, Ref: duct.Ref, Key: "length"})
	if d, err := f.hydraulicDiameter(duct); err == nil && duct.Diameter != nil {
		w.take(Input{Name: "D", Value: d, Ref: duct.Ref, Key: "diameter"})
	} else if err == nil {
		w.take(Input{Name: "D, hydraulic", Value: d})
	}
	if s.EquivalentLength != 0 {
		w.take(Input{Name: "Le of fittings", Value: s.EquivalentLength})
	}
	w.take(Input{Name: "C of fittings", Value: s.Coefficient})
	for _, extra := range run.Stated {
		w.take(Input{Name: "extra", Value: extra.Loss, Ref: duct.Ref, Key: "extra_loss"})
	}
	if s.Compression.Extrapolated {
		w.line.Taken = "what was measured of compressed ducts of 6 to 10 in holds beyond these sizes"
	}
}
