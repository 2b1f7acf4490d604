package designtest

import "fmt"

func (h *house) decideUnits() {
	needed := h.area*0.01 + 7.5*float64(h.bedrooms+1)
	for i := range []int{1, 1, 1, 1, 1, 2, 0}[h.r.IntN(7)] {
		kinds := []string{"hrv", "hrv", "erv", "balanced-fans", "supply-fan", "exhaust-fan"}
		h.units = append(h.units, unit{fmt.Sprintf("unit-%d", i+1), kinds[h.r.IntN(len(kinds))], needed * (0.6 + h.r.Float64())})
	}
}

func (h *house) ventilators() {
	for _, u := range h.units {
		h.table("[[ventilator]]")
		h.text("id", "%s", u.id)
		h.text("kind", "%s", u.kind)
		h.value("room", "%q", h.plant())
		h.oneOf("mounting", "wall", "hung", "floor")
		h.quantity("supply_flow", u.flow, cubicFeetPerMinute)
		h.quantity("extract_flow", u.flow*(0.85+h.r.Float64()*0.3), cubicFeetPerMinute)
		h.running()
		h.ratings(u)
		h.water()
		h.curves(u)
		h.settings(u)
		h.filters()
		if h.chance(0.8) {
			h.access()
		}
	}
}

// running writes a control and times that go with it.
func (h *house) running() {
	control := []string{"continuous", "continuous", "timer", "occupancy", "humidity", "manual"}[h.r.IntN(6)]
	h.value("control", "%q", control)
	if control != "continuous" && h.chance(0.7) {
		h.value("minutes_per_hour", `"%d min"`, 10+h.r.IntN(51))
	}
	h.value("defrost_minutes", `"%d min"`, h.r.IntN(15))
	h.truth("manual_override", 0.8)
	h.truth("control_labelled", 0.7)
	h.truth("continuous", 0.9)
}

func (h *house) ratings(u unit) {
	h.truth("certified", 0.8)
	h.quantity("rated_flow", u.flow*(0.9+h.r.Float64()*0.4), cubicFeetPerMinute)
	h.between("rated_pressure", 0.1, 0.5, waterInches)
	h.value("power", `"%.0f W"`, u.flow*(0.4+h.r.Float64()))
	h.percent("sensible_recovery", 55, 92)
	h.between("sensible_recovery_at", -10, 40, fahrenheit)
	h.percent("latent_recovery", 0, 70)
	h.percent("exhaust_air_transfer", 0, 12)
	h.oneOf("frost_protection", "none", "preheat", "recirculation", "supply-fan-off", "bypass")
	h.between("frost_protection_to", -30, 20, fahrenheit)
	h.value("loudness", `"%.1f sone"`, 0.3+h.r.Float64()*3)
	h.oneOf("supply_joins", "dedicated", "dedicated", "furnace-return", "furnace-supply", "near-return-grille")
	h.truth("interlock", 0.5)
	h.truth("vibration_isolated", 0.8)
	h.truth("flow_to_be_measured", 0.2)
	h.truth("ducts_by_maker_design", 0.2)
}

// water writes the condensate drain and the size of the cabinet.
func (h *house) water() {
	h.oneOf("drain", "gravity", "pump", "none")
	h.between("drain_size", 0.4, 1.2, inches)
	h.value("drain_slope", `"%.2f in/ft"`, h.r.Float64()*0.5)
	h.truth("drain_trap", 0.8)
	h.between("width", 20, 40, inches)
	h.between("depth", 12, 30, inches)
	h.between("height", 16, 40, inches)
}

func (h *house) curves(u unit) {
	if !h.chance(0.5) {
		return
	}
	h.fans(u.flow, 1)
}

// fans writes a curve for each fan, at a speed.
func (h *house) fans(flow, speed float64) {
	for _, key := range []string{"supply_fan", "extract_fan"} {
		h.line("%s = [", key)
		for i, pressure := range []float64{0.9, 0.6, 0.3, 0} {
			h.line("  { flow = %q, pressure = %q },", h.figure(flow*speed*float64(i)/2, cubicFeetPerMinute), h.figure(pressure*speed*speed, waterInches))
		}
		h.line("]")
	}
}

// settings writes what a unit does at its other settings: flows, and a speed of
// its fans or their curves.
func (h *house) settings(u unit) {
	for _, s := range []struct {
		name  string
		speed float64
	}{{"low", 0.4 + h.r.Float64()*0.4}, {"boost", 1.1 + h.r.Float64()*0.5}, {"maximum", 1.2 + h.r.Float64()*0.6}} {
		if !h.chance(0.4) {
			continue
		}
		h.table("[ventilator." + s.name + "]")
		h.quantity("supply_flow", u.flow*s.speed, cubicFeetPerMinute)
		h.quantity("extract_flow", u.flow*s.speed*(0.9+h.r.Float64()*0.2), cubicFeetPerMinute)
		if h.chance(0.5) {
			h.value("fan_speed", `"%.0f %%"`, s.speed*100)
		} else if h.chance(0.5) {
			h.fans(u.flow, s.speed)
		}
	}
}

func (h *house) filters() {
	for _, stream := range []string{"outdoor-air", "extract-air"}[:h.r.IntN(3)] {
		h.table("[[ventilator.filter]]")
		h.oneOf("airstream", stream)
		h.value("merv", "%d", 4+h.r.IntN(10))
		h.truth("upstream_of_core", 0.95)
		h.truth("tool_free", 0.8)
		h.between("reach", 2, 9, feet)
		h.value("service_interval", `"%d d"`, 30+h.r.IntN(200))
		h.between("pull_space", 8, 30, inches)
		h.between("length", 8, 20, inches)
	}
}

func (h *house) access() {
	h.table("[ventilator.access]")
	h.between("working_depth", 20, 48, inches)
	h.between("working_width", 20, 48, inches)
	h.between("working_height", 5, 8, feet)
	h.between("door_width", 20, 36, inches)
	h.between("door_height", 60, 84, inches)
	h.between("passage_length", 2, 30, feet)
	h.between("passage_width", 18, 48, inches)
	h.between("passage_height", 20, 90, inches)
	h.between("passage_floor_width", 16, 36, inches)
	h.between("opening_width", 18, 36, inches)
	h.between("opening_length", 20, 48, inches)
	h.truth("served_through_opening", 0.2)
	h.truth("blocked_by_construction", 0.1)
	h.truth("light", 0.9)
	h.truth("light_switch_at_entry", 0.8)
	h.truth("receptacle", 0.9)
	h.between("receptacle_distance", 1, 30, feet)
	h.between("reach_height", 3, 9, feet)
	h.between("clear_height_below", 5, 8, feet)
	h.truth("over_walking_area", 0.3)
	h.between("above_ground", 2, 20, inches)
	h.truth("in_electrical_working_space", 0.1)
}

// measured writes what was found when the house was done.
func (h *house) measured() {
	if !h.chance(0.3) {
		return
	}
	h.table("[commissioning]")
	h.text("date", "2026-%02d-%02d", 1+h.r.IntN(12), 1+h.r.IntN(28))
	h.oneOf("instrument", "flow hood", "flow grid")
	h.percent("accuracy", 2, 10)
	h.between("supply_flow", 30, 200, cubicFeetPerMinute)
	h.between("extract_flow", 30, 200, cubicFeetPerMinute)
	h.between("supply_pressure", 0.1, 0.6, waterInches)
	h.between("extract_pressure", -0.6, -0.1, waterInches)
	h.truth("certificate_posted", 0.7)
}
