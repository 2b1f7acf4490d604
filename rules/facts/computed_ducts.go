package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// What rules call, by the name of a side.

// bySide gives a value of the named side of a unit.
func bySide[T any](unit *design.Ventilator, name string, value func(*design.Ventilator, side) result[T]) (T, error) {
	s, err := sideNamed(name)
	if err != nil {
		var none T
		return none, err
	}
	return value(unit, s).get()
}

func (f *Facts) ruleExternalLoss(u *design.Ventilator, name string) (q.Pressure, error) {
	return bySide(u, name, f.externalLoss)
}

func (f *Facts) ruleDelivered(u *design.Ventilator, name string) (q.Flow, error) {
	return f.ruleDeliveredAt(u, name, normal)
}

func (f *Facts) ruleDeliveredAt(u *design.Ventilator, name, setting string) (q.Flow, error) {
	return bySide(u, name, func(u *design.Ventilator, s side) result[q.Flow] { return f.delivered(u, s, setting) })
}

func (f *Facts) ruleCriticalEnd(u *design.Ventilator, name string) (string, error) {
	return bySide(u, name, f.criticalEnd)
}

func (f *Facts) ruleOnCurve(u *design.Ventilator, name string) (bool, error) {
	return f.ruleOnCurveAt(u, name, normal)
}

func (f *Facts) ruleOnCurveAt(u *design.Ventilator, name, setting string) (bool, error) {
	return bySide(u, name, func(u *design.Ventilator, s side) result[bool] { return f.onCurve(u, s, setting) })
}

func (f *Facts) ruleDamperLoss(t *design.Terminal) (q.Pressure, error) { return f.damperLoss(t).get() }
