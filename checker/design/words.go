package design

// The words a design may use. Each type lists its own in Values; the loader
// refuses any other and names the nearest.
type (
	// Stage is what a design claims to be.
	Stage string
	// Units is the unit system of reports.
	Units string
	// Evidence says whether a figure was tested or assumed.
	Evidence string
	// RoomUse is what a room is for.
	RoomUse string
	// RunMode says whether a fan runs all the time or on demand.
	RunMode string
	// Discharge is where exhaust air is let go.
	Discharge string
	// LineKind is the kind of a plan line.
	LineKind string
	// BuildingOpeningKind is the kind of an opening into the building.
	BuildingOpeningKind string
	// OpeningKind is the kind of a duct's outdoor end.
	OpeningKind string
	// AirOrigin is where exhausted air comes from.
	AirOrigin string
	// DamperKind is the damper of an opening.
	DamperKind string
	// DischargeDirection is where an opening blows.
	DischargeDirection string
	// SourceKind is the kind of a contaminant source.
	SourceKind string
	// VentilatorKind is the kind of a ventilator.
	VentilatorKind string
	// Mounting is how a unit is held.
	Mounting string
	// ControlKind is how a ventilator is run.
	ControlKind string
	// FrostKind is how a core is kept from freezing.
	FrostKind string
	// DrainKind is where condensate goes.
	DrainKind string
	// SupplyJoint is how supply air joins the house.
	SupplyJoint string
	// Airstream is one of the four streams of a balanced ventilator (ISO 16494, EN 16798-3).
	Airstream string
	// Material is what a duct is made of.
	Material string
	// DuctPlace is the space a duct runs through.
	DuctPlace string
	// SlopeEnd is the end of a duct that lies lower.
	SlopeEnd string
	// DuctOver is what a duct passes over.
	DuctOver string
	// ApplianceKind is the kind of an appliance.
	ApplianceKind string
	// Fuel is what an appliance burns.
	Fuel string
	// VentKind is how an appliance is vented.
	VentKind string
)

// Values lists the stages in the order in which a design passes them.
func (Stage) Values() []string { return []string{"concept", "permit", "rough-in", "final"} }

// Values lists the unit systems.
func (Units) Values() []string { return []string{"IP", "SI"} }

// Values lists the kinds of evidence.
func (Evidence) Values() []string { return []string{"tested", "assumed"} }

// Values lists the uses of rooms and spaces.
func (RoomUse) Values() []string {
	return []string{"bedroom", "living", "dining", "family", "recreation", "office", "kitchen", "bathroom", "toilet",
		"laundry", "utility", "hallway", "stair", "closet", "storage", "mechanical", "basement", "attic", "crawl-space", "garage", "other"}
}

// Values lists the run modes.
func (RunMode) Values() []string { return []string{"continuous", "on-demand"} }

// Values lists the places of discharge.
func (Discharge) Values() []string {
	return []string{"outdoors", "attic", "soffit", "ridge-vent", "crawl-space", "indoors", "ventilator"}
}

// Values lists the kinds of plan lines.
func (LineKind) Values() []string { return []string{"lot-line", "public-way"} }

// Values lists the kinds of openings into a building.
func (BuildingOpeningKind) Values() []string {
	return []string{"window", "door", "skylight", "garage-door", "gravity-intake", "soffit-vent", "attic-vent", "crawl-vent"}
}

// Values lists the kinds of outdoor duct ends.
func (OpeningKind) Values() []string { return []string{"intake", "exhaust"} }

// Values lists the origins of exhausted air.
func (AirOrigin) Values() []string {
	return []string{"living-space", "kitchen-hood", "bathroom", "dryer", "garage", "other"}
}

// Values lists the dampers of an opening.
func (DamperKind) Values() []string { return []string{"none", "gravity", "motorized"} }

// Values lists the directions of discharge.
func (DischargeDirection) Values() []string {
	return []string{"away-from-wall", "up", "down", "left", "right"}
}

// Values lists the kinds of contaminant sources.
func (SourceKind) Values() []string {
	return []string{"dryer", "flue", "direct-vent", "chimney", "plumbing-vent", "radon-vent", "gas-regulator", "gas-meter", "oil-fill",
		"oil-vent", "driveway", "street", "alley", "parking", "loading-dock", "walkway", "trash", "kitchen-exhaust", "bath-exhaust",
		"generator", "lp-cylinder", "lp-tank", "garage-exhaust", "cooling-tower", "electric-meter", "other"}
}

// Values lists the kinds of ventilators.
func (VentilatorKind) Values() []string {
	return []string{"hrv", "erv", "balanced-fans", "supply-fan", "exhaust-fan"}
}

// Values lists the ways of mounting.
func (Mounting) Values() []string { return []string{"wall", "hung", "floor"} }

// Values lists the kinds of control.
func (ControlKind) Values() []string {
	return []string{"continuous", "timer", "occupancy", "humidity", "manual"}
}

// Values lists the kinds of frost protection.
func (FrostKind) Values() []string {
	return []string{"none", "preheat", "recirculation", "supply-fan-off", "bypass", "exhaust-only"}
}

// Values lists the kinds of condensate drain.
func (DrainKind) Values() []string { return []string{"none", "gravity", "pump"} }

// Values lists the ways in which supply air joins the house.
func (SupplyJoint) Values() []string {
	return []string{"dedicated", "furnace-return", "furnace-supply", "near-return-grille"}
}

// Values lists the airstreams.
func (Airstream) Values() []string {
	return []string{"outdoor-air", "supply-air", "extract-air", "exhaust-air"}
}

// Values lists the duct materials.
func (Material) Values() []string {
	return []string{"galvanized-steel", "stainless-steel", "copper", "aluminium", "pvc", "hdpe", "flexible", "flexible-metal", "lined", "duct-board"}
}

// Values lists the places of ducts.
func (DuctPlace) Values() []string {
	return []string{"conditioned", "attic", "crawl-space", "garage", "basement-unconditioned", "outdoors"}
}

// Values lists the ends that a duct may slope to.
func (SlopeEnd) Values() []string { return []string{"outdoors", "ventilator", "room", "none"} }

// Values lists what a duct may pass over.
func (DuctOver) Values() []string { return []string{"panelboard", "other", "nothing"} }

// Values lists the kinds of appliances.
func (ApplianceKind) Values() []string {
	return []string{"furnace", "boiler", "water-heater", "fireplace", "stove", "range", "dryer", "kitchen-hood", "bath-fan", "air-handler", "central-vacuum"}
}

// Values lists the fuels.
func (Fuel) Values() []string { return []string{"gas", "oil", "propane", "wood", "pellet", "electric"} }

// Values lists the kinds of venting.
func (VentKind) Values() []string {
	return []string{"natural-draft", "mechanical-draft", "power-vent", "direct-vent", "unvented"}
}
