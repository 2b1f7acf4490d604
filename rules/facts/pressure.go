package facts

import (
	"fmt"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/envelope"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const pressureSource = "power law of the blower-door test, turned round; wind and stack are left out"

// housePressure is indoor minus outdoor pressure in one operating state, local
// exhausts off.
func (f *Facts) housePressure(s state) result[q.Pressure] {
	line := Line{Name: "house pressure, " + s.name, Formula: "sign x 50 Pa x (|supply - extract| / Q50)^(1/n)", Source: pressureSource, House: true}
	return compute(f, line, func(w *working) func() (q.Pressure, error) {
		law := f.law(w)
		var o envelope.Operation
		for _, unit := range f.Design.Ventilators {
			moved := s.streams(f, w, unit)
			o.Supply, o.Exhaust = append(o.Supply, moved.supply), append(o.Exhaust, moved.extract)
		}
		return func() (q.Pressure, error) { return pressureOf(law(), o) }
	})
}

// law gathers the leakage; its inputs are those of this line.
func (f *Facts) law(w *working) func() envelope.Leakage {
	leakage := f.leakage()
	w.line.Inputs = append(w.line.Inputs, leakage.line.Inputs...)
	w.line.Taken = leakage.line.Taken
	law := fromWhole(w, leakage)
	return func() envelope.Leakage { return law }
}

func pressureOf(law envelope.Leakage, o envelope.Operation) (q.Pressure, error) {
	houses, err := law.Pressures(o)
	if err != nil {
		return 0, err
	}
	return houses[0].Pressure, nil
}

// worstPressure is the house pressure with every local exhaust on and the
// ventilators in the state that pulls hardest.
func (f *Facts) worstPressure() result[q.Pressure] {
	line := Line{Name: "house pressure, every exhaust on", Formula: "sign x 50 Pa x (|supply + makeup - exhaust| / Q50)^(1/n), the state that pulls hardest",
		Source: pressureSource + "; worst-case tests of combustion safety", House: true}
	return compute(f, line, func(w *working) func() (q.Pressure, error) {
		law, local := f.law(w), f.devices(w)
		var worst []stateAtWork
		for _, s := range states {
			if f.can(s) {
				worst = append(worst, stateAtWork{s.name, f.withExhausts(w, s, local)})
			}
		}
		if len(worst) == 0 { // no ventilator: the exhausts alone
			worst = append(worst, stateAtWork{"", f.withExhausts(w, states[0], local)})
		}
		return func() (q.Pressure, error) {
			p, name, err := deepest(law(), worst)
			w.line.Note = name
			return p, err
		}
	})
}

// withExhausts is a state of the ventilators with every local exhaust that
// pulls.
func (f *Facts) withExhausts(w *working, s state, local []envelope.Device) func() (envelope.Operation, error) {
	devices := append(make([]envelope.Device, 0, len(local)+len(f.Design.Ventilators)), local...)
	for _, unit := range f.Design.Ventilators {
		moved := s.streams(f, w, unit)
		devices = append(devices, envelope.Device{Name: unit.ID, Supply: moved.supply, Exhaust: moved.extract, Continuous: true})
	}
	return func() (envelope.Operation, error) { return envelope.WorstCase(devices...) }
}

// stateAtWork is an operating state with every local exhaust that pulls.
type stateAtWork struct {
	name      string
	operation func() (envelope.Operation, error)
}

// deepest is the lowest pressure of several states, and the state that has it; zero
// where none is below.
func deepest(law envelope.Leakage, states []stateAtWork) (lowest q.Pressure, name string, err error) {
	for _, s := range states {
		o, err := s.operation()
		if err != nil {
			return 0, "", err
		}
		p, err := pressureOf(law, o)
		if err != nil {
			return 0, "", err
		}
		if p < lowest {
			lowest, name = p, s.name
		}
	}
	return lowest, name, nil
}

// tolerance is the depressurization that a combustion appliance bears: as stated,
// or the usual figure of its venting. Where the design does not tell a shared
// vent from one of its own, the stricter figure is taken.
func (f *Facts) tolerance(a *design.Appliance) result[q.Pressure] {
	line := Line{Name: "depressurization that it bears", Of: f.label(a), Formula: "as stated, or by the way of venting", House: true}
	return compute(f, line, func(w *working) func() (q.Pressure, error) {
		if a.PressureLimit != nil {
			limit := given(w, "stated", a.PressureLimit, a.Ref, "pressure_limit")
			return func() (q.Pressure, error) { return limit, nil }
		}
		vent := given(w, "vent", a.Vent, a.Ref, "vent")
		return func() (q.Pressure, error) {
			venting, known := ventingOf(a.Kind, vent)
			if !known {
				return 0, fmt.Errorf("no usual figure for venting %q, expected pressure_limit", vent)
			}
			t, err := envelope.ToleranceOf(venting)
			w.line.Taken = "the usual figure of its venting: " + string(venting)
			w.line.Source = t.Document + " (" + t.Read + ")"
			return t.Limit, err
		}
	})
}

func ventingOf(kind design.ApplianceKind, vent design.VentKind) (envelope.Venting, bool) {
	switch {
	case vent == "direct-vent":
		return envelope.SealedCombustion, true
	case vent == "power-vent":
		return envelope.InducedDraft, true
	case vent == "mechanical-draft":
		return envelope.SharedInducedDraft, true
	case vent == "natural-draft" && kind == "water-heater":
		return envelope.LoneWaterHeater, true
	case vent == "natural-draft" && (kind == "furnace" || kind == "boiler"):
		return envelope.SharedNaturalDraft, true
	case vent == "natural-draft":
		return envelope.NaturalDraft, true
	}
	return "", false
}

// burns tells an appliance that takes its air from the house or could. A vent or
// the fuel decides; without both it is not known of what may burn fuel.
func burns(a *design.Appliance) (bool, error) {
	switch {
	case a.Vent != nil && *a.Vent != "unvented":
		return true, nil
	case slices.Contains(ventless, a.Kind):
		return false, nil
	case a.Fuel == nil:
		return false, &document.Missing{Ref: a.Ref, Key: "fuel"}
	}
	return *a.Fuel != "electric", nil
}

// ventless are appliances that burn nothing, or whose flame no suction disturbs,
// unless the design gives them a vent.
var ventless = []design.ApplianceKind{"range", "dryer", "kitchen-hood", "bath-fan", "air-handler", "central-vacuum"}

func (f *Facts) pressureLines() []Line {
	lines := []Line{*f.flow50().line}
	for _, s := range states {
		if f.can(s) {
			lines = append(lines, *f.housePressure(s).line)
		}
	}
	lines = append(lines, *f.worstPressure().line, *f.infiltration().line)
	lines = append(lines, f.creditLines()...)
	lines = append(lines, *f.combined().line)
	for _, a := range f.Design.Appliances {
		if does, err := burns(a); does || err != nil {
			lines = append(lines, *f.tolerance(a).line)
		}
	}
	return lines
}

// What rules call.

func (f *Facts) ruleHousePressure(name StateWord) (q.Pressure, error) {
	if len(f.Design.Ventilators) == 0 {
		return 0, f.missingVentilator()
	}
	return f.housePressure(name.state(f)).get()
}

func (f *Facts) ruleWorstPressure() (q.Pressure, error)                { return f.worstPressure().get() }
func (f *Facts) ruleTolerance(a *design.Appliance) (q.Pressure, error) { return f.tolerance(a).get() }
func (f *Facts) ruleInfiltration() (q.Flow, error)                     { return f.infiltration().get() }
func (f *Facts) ruleNormalized() (q.Flow, error)                       { return f.normalizedInfiltration().get() }
func (f *Facts) ruleCombustion(a *design.Appliance) (bool, error)      { return burns(a) }
