package facts

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/airflow"
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// openOperation is where the fan of a side meets its ducts when no balancing
// damper is set: air divides so that every way loses the same.
func (f *Facts) openOperation(unit *design.Ventilator, s side) result[*airflow.Operation] {
	line := Line{Name: s.name + " fan at work, dampers open", Of: f.label(unit), Source: lossSource}
	return compute(f, line, func(w *working) func() (*airflow.Operation, error) {
		built := fromWhole(w, f.ducts(unit, s))
		curve := fan(w, unit, s, normal)
		return func() (*airflow.Operation, error) {
			c, err := curve(built.air)
			if err != nil {
				return nil, err
			}
			return built.MeetOpen(c.Curve)
		}
	})
}

// openFlow is what a terminal gets when no balancing damper is set.
func (f *Facts) openFlow(terminal *design.Terminal) result[q.Flow] {
	line := Line{Name: "flow with every damper open", Of: f.label(terminal), Formula: "every way from the fan loses the same", Source: lossSource}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		var all []*airflow.Losses
		for _, unit := range f.Design.Ventilators {
			for _, s := range sides(unit) {
				if s.indoor != terminal.Airstream {
					continue
				}
				if o := fromWhole(w, f.openOperation(unit, s)); o != nil && o.Meeting == airflow.OnCurve {
					all = append(all, o.Losses())
				}
			}
		}
		return func() (q.Flow, error) {
			for _, losses := range all {
				if e, is := losses.End(terminal.ID); is {
					w.take(Input{Name: "loss of this way at that flow", Value: e.Sum})
					return e.Flow, nil
				}
			}
			return 0, fmt.Errorf("no fan that works inside its curve is joined to %s", design.Label(terminal))
		}
	})
}

func (f *Facts) ruleOpenFlow(t *design.Terminal) (q.Flow, error) { return f.openFlow(t).get() }
