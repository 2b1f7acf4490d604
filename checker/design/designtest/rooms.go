package designtest

import "fmt"

func (h *house) decideRooms() {
	add := func(id, use string) { h.rooms = append(h.rooms, room{id, use}) }
	for i := range h.bedrooms {
		add(fmt.Sprintf("bed-%d", i+1), "bedroom")
	}
	add("living", "living")
	add("kitchen", "kitchen")
	for i := range 1 + h.r.IntN(3) {
		add(fmt.Sprintf("bath-%d", i+1), []string{"bathroom", "toilet"}[h.r.IntN(2)])
	}
	for _, more := range []string{"laundry", "hallway", "mechanical", "dining", "attic", "crawl-space", "basement", "garage", "office"} {
		if h.chance(0.5) {
			add(more, more)
		}
	}
}

// plant is the room that equipment stands in.
func (h *house) plant() string {
	for _, r := range h.rooms {
		switch r.use {
		case "mechanical", "basement", "attic", "laundry", "garage", "crawl-space":
			return r.id
		}
	}
	return "living"
}

func outside(use string) bool { return use == "attic" || use == "crawl-space" || use == "garage" }

func (h *house) writeRooms() {
	for _, r := range h.rooms {
		h.table("[[room]]")
		h.text("id", "%s", r.id)
		h.text("use", "%s", r.use)
		h.between("area", 30, 300, squareFeet)
		h.between("height", 7, 10, feet)
		h.value("storey", "%d", 1+h.r.IntN(h.storeys))
		h.value("conditioned", "%v", !outside(r.use))
		if outside(r.use) {
			h.between("lowest_temperature", -10, 50, fahrenheit)
		}
		if r.use == "bedroom" {
			h.between("door_undercut", 0, 1.5, inches)
			h.quantity("door_width", 30, inches)
		}
		if wet(r.use) && h.chance(0.7) {
			h.localExhaust(r)
		}
	}
}

func wet(use string) bool { return use == "kitchen" || use == "bathroom" || use == "toilet" }

func (h *house) localExhaust(r room) {
	h.table("[room.local_exhaust]")
	low, high := 20.0, 120.0
	if r.use == "kitchen" {
		low, high = 60, 400
	}
	h.between("flow", low, high, cubicFeetPerMinute)
	h.oneOf("mode", "continuous", "on-demand", "on-demand")
	h.between("rated_pressure", 0.1, 0.4, waterInches)
	h.oneOf("discharge", "outdoors", "outdoors", "outdoors", "attic", "ventilator")
}

func (h *house) appliances() {
	h.appliance("clothes-dryer", "dryer", 150)
	for _, kind := range []string{"kitchen-hood", "furnace", "water-heater", "fireplace", "range", "bath-fan", "boiler"} {
		if h.chance(0.4) {
			h.appliance("the-"+kind, kind, 60+h.r.Float64()*400)
		}
	}
}

func (h *house) appliance(id, kind string, flow float64) {
	h.table("[[appliance]]")
	h.text("id", "%s", id)
	h.text("kind", "%s", kind)
	h.value("room", "%q", h.rooms[h.r.IntN(len(h.rooms))].id)
	switch kind {
	case "furnace", "boiler", "water-heater", "fireplace":
		h.burner()
		h.between("fuel_input", 30_000, 120_000, btuPerHour)
		h.between("pressure_limit", 0.01, 0.06, waterInches)
	default:
		h.quantity("flow", flow, cubicFeetPerMinute)
		h.between("makeup_flow", 0, 400, cubicFeetPerMinute)
		h.oneOf("discharge", "outdoors", "outdoors", "attic", "indoors")
		h.oneOf("duct_material", "galvanized-steel", "flexible", "pvc")
	}
}

// burner writes a fuel, and a vent for what burns: nothing electric has one.
func (h *house) burner() {
	fuels := []string{"gas", "oil", "propane", "electric", "wood"}
	fuel := fuels[h.r.IntN(len(fuels))]
	h.oneOf("fuel", fuel)
	if fuel != "electric" {
		h.oneOf("vent", "natural-draft", "mechanical-draft", "power-vent", "direct-vent")
	}
}
