package facts

import (
	"errors"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// averageSupply is the outdoor air that a unit delivers on average: while it
// runs, times the share of time that it does, less the time of defrosting.
func (f *Facts) averageSupply(unit *design.Ventilator) result[q.Flow] {
	return f.average(unit, "average supply flow", "supply_flow", unit.SupplyFlow)
}

func (f *Facts) averageExtract(unit *design.Ventilator) result[q.Flow] {
	return f.average(unit, "average extract flow", "extract_flow", unit.ExtractFlow)
}

func (f *Facts) average(unit *design.Ventilator, name, key string, flow *q.Flow) result[q.Flow] {
	line := Line{Name: name, Of: f.label(unit), Formula: "flow x share of time x (60 min - defrost) / 60 min",
		Source: "definition; defrost as Minnesota Rules 1322.1104 counts it"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		running := given(w, "flow", flow, unit.Ref, key)
		share, err := f.runShare(unit)
		share = fromError(w, "share of time", share, err)
		defrost := f.defrosting(w, unit)
		return func() (q.Flow, error) { return moistair.AfterDefrost(running*q.Flow(share), defrost) }
	})
}

// defrosting is the time of each hour that a unit defrosts at winter design. A core
// whose protection stops or turns a stream takes some wherever it can freeze.
func (f *Facts) defrosting(w *working, unit *design.Ventilator) q.Duration {
	if unit.DefrostMinutes != nil || hasCore(unit) && defrosts(unit) && f.mayFreeze(w, unit) {
		return given(w, "defrost", unit.DefrostMinutes, unit.Ref, "defrost_minutes")
	}
	if w.line.Taken == "" {
		w.line.Taken = "no time of defrosting, since none is given"
	}
	return 0
}

// mayFreeze is false only where the frost margin is known and leaves no frost.
func (f *Facts) mayFreeze(w *working, unit *design.Ventilator) bool {
	margin := f.frostMargin(unit)
	if margin.err != nil || margin.value < 0 {
		return true
	}
	w.take(Input{Name: "frost margin at winter design", Value: margin.value})
	w.line.Taken = "no time of defrosting: the core does not freeze at winter design"
	return false
}

// netOutdoorAir is what is left of the supply flow when the exhaust air that the
// core carries over is taken off.
func (f *Facts) netOutdoorAir(unit *design.Ventilator) result[q.Flow] {
	line := Line{Name: "net outdoor air", Of: f.label(unit), Formula: "supply flow x (1 - exhaust air transfer ratio)",
		Source: "AHRI 1060 and ASHRAE 84, from memory"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		flow := given(w, "supply flow", unit.SupplyFlow, unit.Ref, "supply_flow")
		transfer := given(w, "exhaust air transfer ratio", unit.ExhaustTransfer, unit.Ref, "exhaust_air_transfer")
		return func() (q.Flow, error) { return moistair.NetOutdoorFlow(flow, transfer) }
	})
}

var errNoPower = errors.New("a unit without power has no efficacy")

// efficacy is design airflow over electric power: for two streams the outdoor
// airflow over the power of both fans.
func (f *Facts) efficacy(unit *design.Ventilator) result[q.Efficacy] {
	line := Line{Name: "fan efficacy", Of: f.label(unit), Formula: "airflow / power",
		Source: "IRC 2021 N1103.6.2 (R403.6.2), footnote; 2024 names the outdoor airflow and the power of all fans"}
	return compute(f, line, func(w *working) func() (q.Efficacy, error) {
		flow, key := unit.SupplyFlow, "supply_flow"
		if unit.Kind == "exhaust-fan" {
			flow, key = unit.ExtractFlow, "extract_flow"
		}
		moved := given(w, "airflow", flow, unit.Ref, key)
		power := given(w, "power", unit.Power, unit.Ref, "power")
		return func() (q.Efficacy, error) {
			if power == 0 {
				return 0, errNoPower
			}
			return q.Efficacy(float64(moved) / float64(power)), nil
		}
	})
}
