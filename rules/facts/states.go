package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/envelope"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// streams are the two flows of a ventilator in one state; a stream that its kind
// does not have is zero.
type streams struct{ supply, extract q.Flow }

func (f *Facts) normalStreams(w *working, unit *design.Ventilator) streams {
	var s streams
	if unit.Kind != "exhaust-fan" {
		s.supply = given(w, unit.ID+" supply flow", unit.SupplyFlow, unit.Ref, "supply_flow")
	}
	if unit.Kind != "supply-fan" {
		s.extract = given(w, unit.ID+" extract flow", unit.ExtractFlow, unit.Ref, "extract_flow")
	}
	return s
}

// settingStreams are those of another setting, as stated or as its fans deliver
// them; a unit without it stays normal.
func (f *Facts) settingStreams(w *working, unit *design.Ventilator, name string) streams {
	at := settingNamed(unit, name)
	if at == nil {
		return f.normalStreams(w, unit)
	}
	var moved streams
	if unit.Kind != "exhaust-fan" {
		moved.supply = f.settingFlow(w, unit, supplySide, name, at)
	}
	if unit.Kind != "supply-fan" {
		moved.extract = f.settingFlow(w, unit, extractSide, name, at)
	}
	return moved
}

func (f *Facts) settingFlow(w *working, unit *design.Ventilator, s side, name string, at *design.Setting) q.Flow {
	stated, _ := s.asked(unit, name)
	label := unit.ID + " " + name + " " + s.name + " flow"
	if stated == nil && (at.FanSpeed != nil || len(s.fan(at.SupplyFan, at.ExtractFan)) > 0) {
		return from(w, label, f.delivered(unit, s, name))
	}
	return given(w, label, stated, at.Ref, s.name+"_flow")
}

// state is one way in which the ventilators of a house may run.
type state struct {
	name    string
	applies func(unit *design.Ventilator) bool // some unit must be able to
	streams func(f *Facts, w *working, unit *design.Ventilator) streams
}

func twoStreams(unit *design.Ventilator) bool {
	return unit.Kind != "exhaust-fan" && unit.Kind != "supply-fan"
}

func anyUnit(*design.Ventilator) bool { return true }

// defrosts tells a unit whose defrosting moves other flows than its normal run.
func defrosts(unit *design.Ventilator) bool {
	return unit.Frost != nil && (*unit.Frost == "supply-fan-off" || *unit.Frost == "exhaust-only" || *unit.Frost == "recirculation")
}

func defrostStreams(f *Facts, w *working, unit *design.Ventilator) streams {
	s := f.normalStreams(w, unit)
	if !defrosts(unit) {
		return s
	}
	s.supply = 0
	if *unit.Frost == "recirculation" {
		s.extract = 0
	}
	return s
}

// setting is the state of units at one of their other settings.
func setting(name string) state {
	return state{name,
		func(u *design.Ventilator) bool { return settingNamed(u, name) != nil },
		func(f *Facts, w *working, u *design.Ventilator) streams { return f.settingStreams(w, u, name) }}
}

// states are the ways, in the order of a worksheet.
var states = []state{
	{normal, anyUnit, (*Facts).normalStreams},
	setting("low"), setting("boost"), setting("maximum"),
	{"defrost", defrosts, defrostStreams},
	{"supply fan stopped", twoStreams, func(f *Facts, w *working, u *design.Ventilator) streams {
		return streams{0, f.normalStreams(w, u).extract}
	}},
	{"extract fan stopped", twoStreams, func(f *Facts, w *working, u *design.Ventilator) streams {
		return streams{f.normalStreams(w, u).supply, 0}
	}},
	{"off", anyUnit, func(*Facts, *working, *design.Ventilator) streams { return streams{} }},
}

func (f *Facts) can(s state) bool {
	for _, unit := range f.Design.Ventilators {
		if s.applies(unit) {
			return true
		}
	}
	return false
}

// devices are the exhaust appliances and local fans of the house, each with the
// makeup air that comes with it.
func (f *Facts) devices(w *working) []envelope.Device {
	var list []envelope.Device
	for _, a := range f.Design.Appliances {
		if !exhausts(a) {
			continue
		}
		d := envelope.Device{Name: a.ID, Exhaust: given(w, a.ID+" flow", a.Flow, a.Ref, "flow")}
		if a.MakeupFlow != nil {
			d.Makeup = given(w, a.ID+" makeup flow", a.MakeupFlow, a.Ref, "makeup_flow")
		}
		list = append(list, d)
	}
	for _, room := range f.Design.Rooms {
		if e := room.LocalExhaust; e != nil && !f.exhaustIn(room) && !throughVentilator(e) {
			list = append(list, envelope.Device{Name: room.ID, Exhaust: given(w, room.ID+" local exhaust", e.Flow, e.Ref, "flow")})
		}
	}
	return list
}

// exhausts tells an appliance that takes air out of the house while it runs.
func exhausts(a *design.Appliance) bool {
	switch a.Kind {
	case "kitchen-hood", "bath-fan", "dryer":
		return a.Discharge == nil || *a.Discharge == "outdoors"
	}
	return false
}

func throughVentilator(e *design.LocalExhaust) bool {
	return e.Discharge != nil && *e.Discharge == "ventilator"
}

// exhaustIn tells a room whose fan stands among the appliances already.
func (f *Facts) exhaustIn(room *design.Room) bool {
	for _, a := range f.Design.Appliances {
		if exhausts(a) && a.Room != nil && a.Room.To == room {
			return true
		}
	}
	return false
}

// missingVentilator says that there is nothing to run.
func (f *Facts) missingVentilator() error {
	return &document.Missing{Ref: f.Design.Ref, Key: "ventilator"}
}
