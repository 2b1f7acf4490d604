// Package designtest makes plausible designs for tests and measurements. All of
// them are invented: lots, houses and equipment are drawn from a seed.
//
// A house loads without problems. It is not a sound design: some of its figures
// break rules, and some are left out, so that rules pass, fail and stay open.
package designtest

import "math/rand/v2"

// House gives the text of a design file; the same seed gives the same text. Later
// versions of this package may give another.
func House(seed uint64) string {
	h := &house{page: page{r: rand.New(rand.NewPCG(seed, 0x5eed))}}
	h.decide()
	h.project(seed)
	h.dwelling()
	h.writeRooms()
	h.site()
	h.buildingOpenings()
	h.ductEnds()
	h.sources()
	h.ventilators()
	h.terminals()
	h.writeDucts()
	h.appliances()
	h.measured()
	h.stated()
	return h.b.String()
}

// house is one house as it is being written.
type house struct {
	page

	storeys  int
	bedrooms int
	area     float64 // ft2, of all storeys
	corners  [][2]float64
	sides    []side
	height   float64 // ft, of the walls
	rooms    []room
	units    []unit
	ends     []end
}

// side is one wall of the footprint.
type side struct {
	id     string
	length float64 // ft
}

type room struct{ id, use string }

// unit is a ventilator.
type unit struct {
	id, kind string
	flow     float64 // cfm
}

// end is an outdoor end of a duct.
type end struct{ id, kind, serves string }

// decide draws what everything else hangs on.
func (h *house) decide() {
	h.si = h.chance(0.25)
	h.gaps = []float64{0, 0.02, 0.1, 0.3}[h.r.IntN(4)]
	h.storeys = 1 + h.r.IntN(3)
	h.bedrooms = 1 + h.r.IntN(5)
	width, depth := 20+float64(h.r.IntN(40)), 18+float64(h.r.IntN(30))
	h.corners = [][2]float64{{0, 0}, {width, 0}, {width, depth}, {0, depth}}
	h.area = width * depth * float64(h.storeys)
	if h.chance(0.4) {
		x, y := width/2, depth/2
		h.corners = [][2]float64{{0, 0}, {width, 0}, {width, y}, {x, y}, {x, depth}, {0, depth}}
		h.area -= x * y * float64(h.storeys)
	}
	h.height = float64(h.storeys)*9 + 2
	h.decideRooms()
	h.decideUnits()
}

func (h *house) project(seed uint64) {
	h.line("# An invented house, drawn from seed %d.\n\nformat = 1", seed)
	h.table("[project]")
	h.text("name", "House %d", seed)
	h.text("site", "Lot %d, Harbor County (invented)", seed%97)
	h.word("stage", "concept", "permit", "permit", "permit", "rough-in", "final")
	h.text("units", "%s", map[bool]string{false: "IP", true: "SI"}[h.si])
}

func (h *house) dwelling() {
	h.table("[dwelling]")
	h.quantity("floor_area", h.area, squareFeet)
	h.quantity("volume", h.area*8.5, cubicFeet)
	h.value("bedrooms", "%d", h.bedrooms)
	h.value("storeys", "%d.0", h.storeys)
	h.quantity("height", h.height, feet)
	h.oneOf("climate_zone", "3A", "4A", "5A", "6A", "7")
	summer := 75 + h.r.Float64()*25
	h.quantity("winter_outdoor", -20+h.r.Float64()*50, fahrenheit)
	h.quantity("summer_outdoor", summer, fahrenheit)
	h.quantity("summer_wet_bulb", summer-1-h.r.Float64()*20, fahrenheit)
	h.quantity("winter_indoor", 66+h.r.Float64()*6, fahrenheit)
	h.quantity("summer_indoor", 73+h.r.Float64()*5, fahrenheit)
	h.percent("winter_humidity", 20, 50)
	h.percent("summer_humidity", 40, 60)
	h.quantity("elevation", h.r.Float64()*5000, feet)
	h.quantity("snow_depth", h.r.Float64()*3, feet)
	if h.chance(0.7) {
		h.table("[dwelling.leakage]")
		h.quantity("flow_50", h.area*(0.2+h.r.Float64()), cubicFeetPerMinute)
		h.value("exponent", "%.2f", 0.55+h.r.Float64()*0.2)
		h.oneOf("basis", "tested", "assumed")
		h.value("weather_factor", "%.2f", 0.4+h.r.Float64()*0.6)
	}
}
