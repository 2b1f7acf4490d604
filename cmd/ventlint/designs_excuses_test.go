package main

import (
	"slices"
	"strings"
)

// What is lost without a word when a line of a sound design is taken away. A
// path is the header of the table and the key; "[]" is an element on a line of
// its own.
var (
	forPeople = paths(`project.site project.jurisdiction project.designer project.notes room.name
		building_opening.name opening.name source.name ventilator.name appliance.name`)

	// codes: the design then gets the standard packs, which are those that it names
	standard = paths(`project.codes`)

	// figures that none of these two packs asks for: of local packs, and of what
	// is computed beside the rules
	ofOtherPacks = paths(`dwelling.occupants dwelling.storeys dwelling.height dwelling.climate_zone
		dwelling.summer_outdoor dwelling.summer_wet_bulb dwelling.summer_indoor
		dwelling.summer_humidity dwelling.attached_share
		dwelling.leakage.flow_50 dwelling.leakage.air_changes_50 dwelling.leakage.exponent dwelling.leakage.basis
		dwelling.leakage.weather_factor dwelling.leakage.weather_source
		room.area room.height room.storey wall.height opening.labelled opening.discharges
		source.fuel_input source.gas_pressure source.mechanical_draft
		ventilator.rated_pressure ventilator.sensible_recovery_at
		ventilator.latent_recovery ventilator.supply_fan[] ventilator.extract_fan[]
		ventilator.low.fan_speed ventilator.boost.supply_fan[] ventilator.boost.extract_fan[]
		ventilator.maximum.supply_fan[] ventilator.maximum.extract_fan[]
		terminal.above_floor terminal.diameter duct.fitting[]
		appliance.fuel_input appliance.pressure_limit`)

	// keys that decide something in other houses, and nothing in this one
	notHere = map[string]string{
		"dwelling.flood_level":              "a house is in a flood area only where one is given",
		"room.conditioned":                  "asked only of rooms of a ventilator, and of burners that need room air",
		"room.lowest_temperature":           "asked only of a room of a ventilator that is not conditioned",
		"room.open_passage_area":            "asked only of a room with supply air",
		"room.local_exhaust.flow":           "a hood or fan of the room says the same",
		"room.local_exhaust.mode":           "the flow is enough in either mode",
		"room.local_exhaust.rated_pressure": "asked of bathrooms; this one is of the kitchen",
		"line.from":                         "asked of lot lines; this one is the edge of the street",
		"line.to":                           "asked of lot lines; this one is the edge of the street",
		"building_opening.operable":         "far enough from every exhaust, operable or not",
		"building_opening.wall":             "a window that does not open may be anywhere",
		"building_opening.from_left":        "a window that does not open may be anywhere",
		"building_opening.above_grade":      "a window that does not open may be anywhere",
		"building_opening.width":            "a window that does not open may be anywhere",
		"building_opening.height":           "a window that does not open may be anywhere",
		"building_opening.roof":             "its point and level say where it is",
		"opening.flow":                      "asked of hoods by their face velocity; this one is a dryer's",
		"opening.serves":                    "far enough from the intake, whatever it serves",
		"opening.air_from":                  "what it serves says the same",
		"opening.service_reach":             "the height of the hood is taken instead",
		"source.above_grade":                "far enough on the plan",
		"source.at":                         "high enough above the intake, wherever it is",
		"source.diameter":                   "measured from its center, and said so",
		"source.roof":                       "its point and level say where it is",
		"ventilator.loudness":               "asked where people stay; this one is in a mechanical room",
		"ventilator.access.light":           "asked in attics and under floors",
		"ventilator.access.receptacle":      "asked in attics and under floors",
		"duct.place":                        "insulated enough for any place",
		"appliance.room":                    "electric, or independent of room air, or told by the room's exhaust",
		"appliance.fuel":                    "its vent, or its kind, says enough",
		"appliance.vent":                    "its fuel says that it burns, and what it bears is stated",
		"appliance.duct_material":           "asked of the hood alone",
	}
)

func paths(text string) []string { return strings.Fields(text) }

// silent tells whether a line may be lost without a word.
func silent(path string) bool {
	_, ok := notHere[path]
	return ok || slices.Contains(slices.Concat(forPeople, standard, ofOtherPacks), path)
}
