package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// What rules call, by the name of a side.

func (f *Facts) ruleExternalLoss(u *design.Ventilator, on SideWord) (q.Pressure, error) {
	return f.externalLoss(u, on.side()).get()
}

func (f *Facts) ruleDelivered(u *design.Ventilator, on SideWord) (q.Flow, error) {
	return f.delivered(u, on.side(), normal).get()
}

func (f *Facts) ruleDeliveredAt(u *design.Ventilator, on SideWord, at SettingWord) (q.Flow, error) {
	return f.delivered(u, on.side(), string(at)).get()
}

func (f *Facts) ruleCriticalEnd(u *design.Ventilator, on SideWord) (string, error) {
	return f.criticalEnd(u, on.side()).get()
}

func (f *Facts) ruleOnCurve(u *design.Ventilator, on SideWord) (bool, error) {
	return f.onCurve(u, on.side(), normal).get()
}

func (f *Facts) ruleOnCurveAt(u *design.Ventilator, on SideWord, at SettingWord) (bool, error) {
	return f.onCurve(u, on.side(), string(at)).get()
}

func (f *Facts) ruleDamperLoss(t *design.Terminal) (q.Pressure, error) { return f.damperLoss(t).get() }
