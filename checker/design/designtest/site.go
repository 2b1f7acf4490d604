package designtest

import (
	"cmp"
	"fmt"
)

// site writes the walls, counter-clockwise, and the lines of the lot.
func (h *house) site() {
	grade := float64(h.r.IntN(3))
	for i, from := range h.corners {
		to := h.corners[(i+1)%len(h.corners)]
		w := side{fmt.Sprintf("wall-%d", i+1), max(to[0]-from[0], from[0]-to[0]) + max(to[1]-from[1], from[1]-to[1])}
		h.sides = append(h.sides, w)
		h.table("[[wall]]")
		h.text("id", "%s", w.id)
		h.line("from = %s\nto = %s", h.point(from[0], from[1]), h.point(to[0], to[1]))
		h.text("grade", "%s", h.figure(grade, feet))
		h.text("height", "%s", h.figure(h.height, feet))
	}
	h.lot()
}

func (h *house) lot() {
	if h.chance(h.gaps) {
		return
	}
	gap := 3 + h.r.Float64()*25
	for i, kind := range []string{"lot-line", "lot-line", "lot-line", "public-way"} {
		h.table("[[line]]")
		h.text("id", "line-%d", i+1)
		h.text("kind", "%s", kind)
		away := gap * (1 + float64(i)/3)
		from, to := [2]float64{-40, -away}, [2]float64{90, -away}
		if i%2 == 1 {
			from, to = [2]float64{-away, -40}, [2]float64{-away, 90}
		}
		h.line("from = %s\nto = %s", h.point(from[0], from[1]), h.point(to[0], to[1]))
	}
}

// onWall puts a shape of a size in feet somewhere on a wall.
func (h *house) onWall(width, height float64) {
	w := h.sides[h.r.IntN(len(h.sides))]
	h.text("wall", "%s", w.id)
	h.quantity("from_left", width+h.r.Float64()*max(w.length-2*width, 0), feet)
	h.quantity("above_grade", height/2+0.5+h.r.Float64()*(h.height-height-1), feet)
}

// onRoof puts a shape somewhere on the roof.
func (h *house) onRoof() {
	h.line("roof = true")
	h.value("at", "%s", h.point(h.r.Float64()*h.corners[1][0]/2, h.r.Float64()*h.corners[1][0]/3))
	h.quantity("level", h.height+2+h.r.Float64()*8, feet)
}

func (h *house) buildingOpenings() {
	for i := range 2 + h.r.IntN(10) {
		h.table("[[building_opening]]")
		h.text("id", "hole-%d", i+1)
		h.word("kind", "window", "window", "window", "door", "garage-door", "gravity-intake", "soffit-vent", "crawl-vent")
		h.truth("operable", 0.7)
		width, height := 1+h.r.Float64()*2, 1+h.r.Float64()*3
		h.onWall(width, height)
		h.quantity("width", width, feet)
		h.quantity("height", height, feet)
	}
}

// ductEnds writes the outdoor ends of the ducts of each ventilator, and those of
// a dryer and fans.
func (h *house) ductEnds() {
	for i, u := range h.units {
		fitting := h.chance(0.2)
		if u.kind != "exhaust-fan" {
			h.ductEnd(end{fmt.Sprintf("fresh-%d", i+1), "intake", u.id}, u.flow, fitting)
		}
		if u.kind != "supply-fan" {
			h.ductEnd(end{fmt.Sprintf("stale-%d", i+1), "exhaust", u.id}, u.flow, fitting)
		}
	}
	h.ductEnd(end{"lint", "exhaust", "clothes-dryer"}, 150, false)
	for i := range h.r.IntN(3) {
		h.ductEnd(end{fmt.Sprintf("bath-out-%d", i+1), "exhaust", ""}, 60, false)
	}
}

func (h *house) ductEnd(e end, flow float64, fitting bool) {
	h.ends = append(h.ends, e)
	h.table("[[opening]]")
	h.text("id", "%s", e.id)
	h.text("kind", "%s", e.kind)
	if e.serves != "" {
		h.value("serves", "%q", e.serves)
	}
	if fitting {
		h.text("fitting", "twin of %s", e.serves)
		h.truth("fitting_listed", 0.6)
	}
	if h.chance(0.9) {
		h.onWall(0.67, 0.67)
	} else {
		h.onRoof()
	}
	h.quantity("diameter", []float64{4, 5, 6, 8}[h.r.IntN(4)], inches)
	if e.kind == "exhaust" {
		air := map[string]string{"clothes-dryer": "dryer", "": "bathroom"}[e.serves]
		h.oneOf("air_from", cmp.Or(air, "living-space"))
	}
	h.quantity("flow", flow, cubicFeetPerMinute)
	h.weather(e)
}

func (h *house) weather(e end) {
	h.truth("screened", 0.8)
	h.between("screen_opening", 0.2, 0.6, inches)
	h.truth("corrosion_resistant", 0.9)
	h.truth("weather_protected", 0.9)
	h.oneOf("damper", "none", "gravity", "motorized")
	h.oneOf("discharges", "away-from-wall", "down", "left")
	h.truth("over_walkway", 0.1)
	h.truth("labelled", 0.6)
	h.truth("under_deck", 0.05)
	h.between("free_area", 10, 50, squareInches)
	h.between("service_reach", 3, 14, feet)
	h.between("from_corner", 0.5, 6, feet)
}
