package designtest

// served is a room with a terminal of the first ventilator.
type served struct {
	room   room
	stream string
}

// servedRooms are the rooms that ducts lead to: supply into rooms that people
// live in, extract from wet ones.
func (h *house) servedRooms() []served {
	if len(h.units) == 0 {
		return nil
	}
	var list []served
	kind := h.units[0].kind
	for _, r := range h.rooms {
		switch {
		case wet(r.use) && kind != "supply-fan":
			list = append(list, served{r, "extract-air"})
		case !wet(r.use) && !outside(r.use) && kind != "exhaust-fan":
			list = append(list, served{r, "supply-air"})
		}
	}
	return list
}

func (h *house) terminals() {
	list := h.servedRooms()
	for _, s := range list {
		h.table("[[terminal]]")
		h.text("id", "at-%s", s.room.id)
		h.text("airstream", "%s", s.stream)
		h.value("room", "%q", s.room.id)
		h.between("flow", 8, 40, cubicFeetPerMinute)
		h.between("loss", 0.01, 0.1, waterInches)
		h.quantity("loss_at", 25, cubicFeetPerMinute)
		h.between("above_floor", 0.5, 8, feet)
		h.between("from_return_grille", 2, 15, feet)
		h.between("from_cooktop", 2, 10, feet)
		h.truth("grease_filter", 0.5)
	}
}

func (h *house) writeDucts() {
	for _, e := range h.ends {
		if e.serves == "" || len(h.units) == 0 || e.serves == "clothes-dryer" {
			continue
		}
		if e.kind == "intake" {
			h.duct("run-"+e.id, "outdoor-air", e.id, e.serves, 80)
		} else {
			h.duct("run-"+e.id, "exhaust-air", e.serves, e.id, 80)
		}
	}
	for _, s := range h.servedRooms() {
		if s.stream == "supply-air" {
			h.duct("to-"+s.room.id, s.stream, h.units[0].id, "at-"+s.room.id, 20)
		} else {
			h.duct("from-"+s.room.id, s.stream, "at-"+s.room.id, h.units[0].id, 25)
		}
	}
}

func (h *house) duct(id, stream, from, to string, flow float64) {
	h.table("[[duct]]")
	h.text("id", "%s", id)
	h.text("airstream", "%s", stream)
	h.text("from", "%s", from)
	h.text("to", "%s", to)
	h.oneOf("material", "galvanized-steel", "galvanized-steel", "flexible", "pvc", "aluminium", "hdpe")
	if h.chance(0.85) {
		h.quantity("diameter", []float64{4, 5, 6, 8}[h.r.IntN(4)], inches)
	} else {
		h.quantity("width", 10, inches)
		h.quantity("height", 3.25, inches)
	}
	h.between("length", 4, 60, feet)
	h.quantity("flow", flow*(0.5+h.r.Float64()), cubicFeetPerMinute)
	h.value("elbows", "%d", h.r.IntN(6))
	h.value("insulation", `"R-%d"`, h.r.IntN(9))
	h.truth("vapor_retarder", 0.6)
	h.oneOf("place", "conditioned", "conditioned", "attic", "crawl-space", "garage")
	h.value("slope", `"%.2f in/ft"`, h.r.Float64()*0.4)
	h.oneOf("slopes_to", "outdoors", "ventilator", "room", "none")
	h.truth("sealed", 0.9)
	h.truth("supported", 0.9)
	h.oneOf("over", "nothing", "nothing", "other", "panelboard")
}
