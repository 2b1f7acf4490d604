package facts

import (
	"reflect"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules/expression"
)

// Vocabulary is the names that rules may use.
func Vocabulary() expression.Vocabulary {
	return expression.Vocabulary{Roots: roots(), Functions: functions(), Label: design.Label,
		Ref: func(facts any) document.Ref { return facts.(*Facts).Design.Ref }}
}

func root[T any](name, doc string, get func(*Facts) T) expression.Root {
	return expression.Root{Name: name, Doc: doc, Type: reflect.TypeFor[T](), Get: func(facts any) any { return get(facts.(*Facts)) }}
}

func roots() []expression.Root {
	return []expression.Root{
		root("project", "what the design is and claims to be", func(f *Facts) *design.Project { return f.Design.Project }),
		root("dwelling", "figures of the whole house and its climate", func(f *Facts) *design.Dwelling { return f.Design.Dwelling }),
		root("commissioning", "what was measured", func(f *Facts) *design.Commissioning { return f.Design.Commissioning }),
		root("rooms", "rooms and spaces, attic, crawl space and garage included", func(f *Facts) []*design.Room { return f.Design.Rooms }),
		root("walls", "walls of the footprint", func(f *Facts) []*design.Wall { return f.Design.Walls }),
		root("lines", "lot lines and other lines of the plan", func(f *Facts) []*design.Line { return f.Design.Lines }),
		root("building_openings", "windows, doors and other openings into the building", func(f *Facts) []*design.BuildingOpening { return f.Design.BuildingOpenings }),
		root("openings", "outdoor ends of ventilation ducts", func(f *Facts) []*design.Opening { return f.Design.Openings }),
		root("intakes", "openings that take outdoor air", func(f *Facts) []*design.Opening { return f.openings("intake") }),
		root("exhausts", "openings that let exhaust air go", func(f *Facts) []*design.Opening { return f.openings("exhaust") }),
		root("sources", "what an intake must stay away from", func(f *Facts) []*design.Source { return f.Design.Sources }),
		root("ventilators", "units and fans that ventilate the dwelling", func(f *Facts) []*design.Ventilator { return f.Design.Ventilators }),
		root("terminals", "grilles and valves in rooms", func(f *Facts) []*design.Terminal { return f.Design.Terminals }),
		root("ducts", "duct runs", func(f *Facts) []*design.Duct { return f.Design.Ducts }),
		root("appliances", "fuel-burning and exhaust equipment", func(f *Facts) []*design.Appliance { return f.Design.Appliances }),
	}
}

func functions() []expression.Function {
	return slices.Concat(placeFunctions(), thingFunctions(), airFunctions(), ductFunctions())
}

// placeFunctions tell where things are.
func placeFunctions() []expression.Function {
	return []expression.Function{
		{Name: "distance", Signature: "distance(a, b) length", Call: expression.Call2((*Facts).distance), Reads: placeReads,
			Doc: "shortest straight line between nearest edges, in any direction; a stated distance wins"},
		{Name: "horizontal", Signature: "horizontal(a, b) length", Call: expression.Call2((*Facts).horizontal), Reads: placeReads,
			Doc: "distance on the plan between nearest edges; a stated distance wins"},
		{Name: "taut", Signature: "taut(a, b) length", Call: expression.Call2((*Facts).taut), Reads: placeReads,
			Doc: "shortest path between nearest edges that stays outside the building; a stated distance wins"},
		{Name: "through_building", Signature: "through_building(a, b) bool", Call: expression.Call2((*Facts).throughBuilding), Reads: placeReads,
			Doc: "the straight line runs through the house; false when a stated distance takes its place"},
		{Name: "rise", Signature: "rise(lower, upper) length", Call: expression.Call2((*Facts).rise), Reads: placeReads,
			Doc: "bottom edge of the second above the top edge of the first; negative when it lies lower"},
		{Name: "clear_height", Signature: "clear_height(opening) length", Call: expression.Call1((*Facts).clearHeight), Reads: placeReads,
			Doc: "bottom edge above the finished ground, or above the nearer lasting surface below"},
		{Name: "same_fitting", Signature: "same_fitting(a, b) bool", Call: expression.Call2((*Facts).sameFitting),
			Doc: "both openings are halves of one combination fitting"},
		{Name: "same_wall", Signature: "same_wall(a, b) bool", Call: expression.Call2((*Facts).sameWall),
			Doc: "both openings are in one wall"},
	}
}

// thingFunctions tell what things are and what belongs to them.
func thingFunctions() []expression.Function {
	return []expression.Function{
		{Name: "run_share", Signature: "run_share(ventilator) ratio", Call: expression.Call1((*Facts).runShare),
			Doc: "share of each hour or cycle that a ventilator runs"},
		{Name: "filters", Signature: "filters(ventilator) list of filters", Call: expression.Call1((*Facts).filters),
			Doc: "filters of a ventilator; not known where the design says nothing of them, none where it says filter = []"},
		{Name: "hydraulic_diameter", Signature: "hydraulic_diameter(duct) length", Call: expression.Call1((*Facts).hydraulicDiameter),
			Doc: "diameter of a round duct, four times area over perimeter of a rectangular one"},
		{Name: "sections", Signature: "sections(duct) list of ducts", Call: expression.Call1((*Facts).run),
			Doc: "sections that the same air passes one after the other, this one among them: to an end, the unit or a branching"},
		{Name: "joined_to", Signature: "joined_to(duct, ventilator) bool", Call: expression.Call2((*Facts).joinedTo),
			Doc: "the duct leads to or from the ventilator, through other ducts too"},
		{Name: "serves", Signature: "serves(opening) text", Call: expression.Call1((*Facts).serves),
			Doc: "what the air of an opening passes, as people call it"},
		{Name: "serves_kind", Signature: "serves_kind(opening) text", Call: expression.Call1((*Facts).servesKind),
			Doc: "kind of the ventilator or appliance whose air passes an opening"},
		{Name: "terminals_in", Signature: "terminals_in(room) list of terminals", Call: expression.Call1((*Facts).terminalsIn),
			Doc: "terminals of a room"},
		{Name: "has_supply", Signature: "has_supply(room) bool", Call: expression.Call1((*Facts).hasSupply),
			Doc: "a supply terminal stands in the room"},
		{Name: "has_extract", Signature: "has_extract(room) bool", Call: expression.Call1((*Facts).hasExtract),
			Doc: "an extract terminal stands in the room"},
		{Name: "room_volume", Signature: "room_volume(room) volume", Call: expression.Call1((*Facts).roomVolume),
			Doc: "floor area times height"},
		{Name: "named", Signature: "named(thing) text", Call: expression.Call1((*Facts).named),
			Doc: "a thing as people call it"},
	}
}

// airFunctions tell what is computed of ventilators, air and the house.
func airFunctions() []expression.Function {
	return []expression.Function{
		{Name: "average_supply", Signature: "average_supply(ventilator) flow", Call: expression.Call1((*Facts).ruleAverageSupply),
			Doc: "supply flow, times the share of time that it runs, less defrosting"},
		{Name: "average_extract", Signature: "average_extract(ventilator) flow", Call: expression.Call1((*Facts).ruleAverageExtract),
			Doc: "extract flow, times the share of time that it runs, less defrosting"},
		{Name: "net_outdoor_air", Signature: "net_outdoor_air(ventilator) flow", Call: expression.Call1((*Facts).ruleNetOutdoorAir),
			Doc: "supply flow less the exhaust air that the core carries over"},
		{Name: "efficacy", Signature: "efficacy(ventilator) efficacy", Call: expression.Call1((*Facts).ruleEfficacy),
			Doc: "design airflow over electric power"},
		{Name: "winter_supply_temperature", Signature: "winter_supply_temperature(ventilator) temperature", Call: expression.Call1((*Facts).ruleWinterSupply),
			Doc: "temperature of the air that leaves the core toward the rooms at winter design"},
		{Name: "summer_supply_temperature", Signature: "summer_supply_temperature(ventilator) temperature", Call: expression.Call1((*Facts).ruleSummerSupply),
			Doc: "temperature of the air that leaves the core toward the rooms at summer design"},
		{Name: "condenses", Signature: "condenses(ventilator) bool", Call: expression.Call1((*Facts).ruleCondenses),
			Doc: "water condenses in the core at winter design"},
		{Name: "core_entering_temperature", Signature: "core_entering_temperature(ventilator) temperature", Call: expression.Call1((*Facts).ruleEntering),
			Doc: "temperature of outdoor air as it meets the core at winter design, after a preheater that the design gives"},
		{Name: "frost_onset", Signature: "frost_onset(ventilator) temperature", Call: expression.Call1((*Facts).ruleFrostOnset),
			Doc: "warmest outdoor temperature at which the core freezes with the winter indoor air"},
		{Name: "house_pressure", Signature: "house_pressure(state) pressure", Call: expression.Call1((*Facts).ruleHousePressure),
			Doc: "indoor minus outdoor pressure in an operating state of the ventilators: normal, low, boost, maximum, defrost, supply fan stopped, extract fan stopped, off"},
		{Name: "worst_pressure", Signature: "worst_pressure() pressure", Call: expression.Call0((*Facts).ruleWorstPressure),
			Doc: "indoor minus outdoor pressure with every exhaust on, the ventilators in the state that pulls hardest"},
		{Name: "tolerance", Signature: "tolerance(appliance) pressure", Call: expression.Call1((*Facts).ruleTolerance),
			Doc: "depressurization that a combustion appliance bears, as stated or by its venting"},
		{Name: "burns", Signature: "burns(appliance) bool", Call: expression.Call1((*Facts).ruleCombustion),
			Doc: "the appliance burns fuel and is vented"},
		{Name: "infiltration", Signature: "infiltration() flow", Call: expression.Call0((*Facts).ruleInfiltration),
			Doc: "effective annual average infiltration, from the blower-door figure, the height and the weather factor, by the form of 2019"},
		{Name: "normalized_infiltration", Signature: "normalized_infiltration() flow", Call: expression.Call0((*Facts).ruleNormalized),
			Doc: "the same by normalized leakage, the form of 2013 and 2016"},
	}
}

// ductFunctions tell what is computed of fans and their ducts.
func ductFunctions() []expression.Function {
	return []expression.Function{
		{Name: "external_loss", Signature: `external_loss(ventilator, "supply" or "extract") pressure`, Call: expression.Call2((*Facts).ruleExternalLoss),
			Doc: "loss of the costliest way from outdoors to a room, or back, at the design flow"},
		{Name: "delivered", Signature: `delivered(ventilator, "supply" or "extract") flow`, Call: expression.Call2((*Facts).ruleDelivered),
			Doc: "flow at which the fan curve meets the ducts"},
		{Name: "delivered_at", Signature: `delivered_at(ventilator, "supply" or "extract", setting) flow`, Call: expression.Call3((*Facts).ruleDeliveredAt),
			Doc: "flow at which the fan curve of a setting (normal, low, boost, maximum) meets the ducts, dampers left as they are for the normal one"},
		{Name: "critical_end", Signature: `critical_end(ventilator, "supply" or "extract") text`, Call: expression.Call2((*Facts).ruleCriticalEnd),
			Doc: "terminal at the end of the costliest way"},
		{Name: "on_fan_curve", Signature: `on_fan_curve(ventilator, "supply" or "extract") bool`, Call: expression.Call2((*Facts).ruleOnCurve),
			Doc: "the fan meets the ducts inside the range of its curve"},
		{Name: "on_fan_curve_at", Signature: `on_fan_curve_at(ventilator, "supply" or "extract", setting) bool`, Call: expression.Call3((*Facts).ruleOnCurveAt),
			Doc: "the fan at a setting meets the ducts inside the range of its curve"},
		{Name: "damper_loss", Signature: "damper_loss(terminal) pressure", Call: expression.Call1((*Facts).ruleDamperLoss),
			Doc: "what the balancing damper of a terminal must add for design flows"},
		{Name: "open_flow", Signature: "open_flow(terminal) flow", Call: expression.Call1((*Facts).ruleOpenFlow),
			Doc: "what a terminal gets when no balancing damper is set"},
	}
}
