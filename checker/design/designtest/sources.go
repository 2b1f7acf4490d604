package designtest

import "fmt"

// sources writes what intakes must stay away from.
func (h *house) sources() {
	kinds := []string{"plumbing-vent", "plumbing-vent", "flue", "direct-vent", "chimney", "radon-vent", "gas-regulator", "gas-meter", "oil-fill",
		"driveway", "street", "alley", "walkway", "parking", "trash", "kitchen-exhaust", "bath-exhaust", "dryer", "generator", "lp-cylinder", "electric-meter"}
	for i := range 1 + h.r.IntN(8) {
		h.table("[[source]]")
		h.text("id", "source-%d", i+1)
		kind := kinds[h.r.IntN(len(kinds))]
		h.text("kind", "%s", kind)
		h.placeSource(kind)
		h.sourceFigures(kind)
	}
}

func (h *house) placeSource(kind string) {
	near := -(4 + h.r.Float64()*20)
	switch kind {
	case "driveway", "parking":
		h.line("outline = [%s, %s, %s, %s]", h.point(5, near), h.point(16, near), h.point(16, -2), h.point(5, -2))
		h.quantity("level", 0, feet)
	case "street", "alley", "walkway":
		h.line("along = [%s, %s]", h.point(-50, near), h.point(90, near))
		h.quantity("level", 0, feet)
	case "plumbing-vent", "chimney", "radon-vent":
		h.onRoof()
		h.quantity("diameter", 3, inches)
	case "trash", "generator", "lp-cylinder", "oil-fill":
		h.value("at", "%s", h.point(h.r.Float64()*30, near))
		h.quantity("level", 2, feet)
		if h.chance(0.5) {
			h.truth("point", 1)
		} else {
			h.between("width", 6, 60, inches)
			h.between("height", 6, 40, inches)
		}
	default:
		h.onWall(0.5, 0.5)
		h.quantity("diameter", 4, inches)
	}
}

func (h *house) sourceFigures(kind string) {
	switch kind {
	case "flue", "direct-vent", "chimney":
		h.between("fuel_input", 20_000, 120_000, btuPerHour)
		h.truth("mechanical_draft", 0.5)
	case "gas-regulator":
		h.between("gas_pressure", 7, 60, waterInches)
	case "kitchen-exhaust", "bath-exhaust":
		h.truth("same_dwelling", 0.8)
	case "lp-cylinder":
		h.truth("filled_on_site", 0.3)
	}
}

// stated writes a distance as a drawing might give it.
func (h *house) stated() {
	if len(h.ends) < 2 || !h.chance(0.15) {
		return
	}
	h.table("[[stated_distance]]")
	h.line("between = [%q, %q]", h.ends[0].id, h.ends[1].id)
	h.text("distance", "%s", h.figure(6+h.r.Float64()*12, feet))
	h.text("drawing", "%s", fmt.Sprintf("A-%d", 1+h.r.IntN(9)))
}
