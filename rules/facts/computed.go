package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// What rules call: the values of lines.

func (f *Facts) ruleAverageSupply(u *design.Ventilator) (q.Flow, error) {
	return f.averageSupply(u).get()
}

func (f *Facts) ruleAverageExtract(u *design.Ventilator) (q.Flow, error) {
	return f.averageExtract(u).get()
}

func (f *Facts) ruleNetOutdoorAir(u *design.Ventilator) (q.Flow, error) {
	return f.netOutdoorAir(u).get()
}

func (f *Facts) ruleEfficacy(u *design.Ventilator) (q.Efficacy, error) { return f.efficacy(u).get() }

func (f *Facts) ruleWinterSupply(u *design.Ventilator) (q.Temperature, error) {
	return f.supplyTemperature(u, winter).get()
}

func (f *Facts) ruleSummerSupply(u *design.Ventilator) (q.Temperature, error) {
	return f.supplyTemperature(u, summer).get()
}

func (f *Facts) ruleEntering(u *design.Ventilator) (q.Temperature, error) { return f.entering(u).get() }

func (f *Facts) ruleCondenses(u *design.Ventilator) (bool, error) { return f.condenses(u).get() }

func (f *Facts) ruleFrostOnset(u *design.Ventilator) (q.Temperature, error) {
	return f.frostOnset(u).get()
}
