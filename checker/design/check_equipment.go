package design

import (
	"slices"

	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// fittings refuses a combination fitting of more than its two halves.
func (c *checker) fittings() {
	halves := map[string][]*Opening{}
	for _, o := range c.design.Openings {
		if o.Fitting == nil {
			continue
		}
		others := halves[*o.Fitting]
		halves[*o.Fitting] = append(others, o)
		switch {
		case len(others) > 1:
			c.report(o.Ref, "fitting", "", "found a third half of fitting %q, expected one intake and one exhaust", *o.Fitting)
		case len(others) == 1 && others[0].Kind == o.Kind && o.Kind != "":
			c.report(o.Ref, "fitting", "", "found a second %s in fitting %q, expected one intake and one exhaust", o.Kind, *o.Fitting)
		}
	}
}

// fans refuses fan curves that no fan has.
func (c *checker) fans() {
	for _, v := range c.design.Ventilators {
		c.curve(v.Ref, "supply_fan", v.SupplyFan)
		c.curve(v.Ref, "extract_fan", v.ExtractFan)
		for _, s := range v.Settings() {
			if s.Setting != nil {
				c.setting(s.Setting)
			}
		}
	}
}

// setting refuses two statements of what one fan does.
func (c *checker) setting(s *Setting) {
	c.curve(s.Ref, "supply_fan", s.SupplyFan)
	c.curve(s.Ref, "extract_fan", s.ExtractFan)
	if s.FanSpeed != nil && (len(s.SupplyFan) > 0 || len(s.ExtractFan) > 0) {
		c.report(s.Ref, "fan_speed", "", "found %s beside a fan curve of this setting, expected one of the two", c.written(s.Ref, "fan_speed", *s.FanSpeed))
	}
}

func (c *checker) curve(of document.Ref, key string, points []FanPoint) {
	points = slices.DeleteFunc(slices.Clone(points), func(p FanPoint) bool { return !p.Given("flow") || !p.Given("pressure") })
	if len(points) == 1 {
		c.report(of, key, "", "found 1 point, expected the 2 or more of a fan curve")
	}
	for i := 1; i < len(points); i++ {
		before, p := points[i-1], points[i]
		flow, pressure := q.Compare(float64(p.Flow), float64(before.Flow)), q.Compare(float64(p.Pressure), float64(before.Pressure))
		switch {
		case flow < 0:
			c.report(p.Ref, "flow", "list the points from the smallest flow up", "found %s after %s, expected rising flows", c.written(p.Ref, "flow", p.Flow), c.written(before.Ref, "flow", before.Flow))
		case pressure > 0:
			c.report(p.Ref, "pressure", "", "found %s after %s, expected a pressure that falls as the flow rises", c.written(p.Ref, "pressure", p.Pressure), c.written(before.Ref, "pressure", before.Pressure))
		case flow == 0 && pressure == 0:
			c.report(p.Ref, "flow", "", "found the same point twice, expected another flow or pressure")
		}
	}
}

// running refuses times of running that contradict each other.
func (c *checker) running() {
	for _, v := range c.design.Ventilators {
		part := v.OnTime != nil && v.Cycle != nil && q.Compare(float64(*v.OnTime), float64(*v.Cycle)) < 0
		if v.OnTime != nil && v.Cycle != nil && q.Compare(float64(*v.OnTime), float64(*v.Cycle)) > 0 {
			c.report(v.Ref, "on_time", "", "found %s, expected at most %s, the whole cycle", c.written(v.Ref, "on_time", *v.OnTime), c.print(*v.Cycle))
		}
		if v.Control == nil || *v.Control != "continuous" {
			continue
		}
		if v.MinutesPerHour != nil && q.Compare(float64(*v.MinutesPerHour), 3600) < 0 {
			c.report(v.Ref, "minutes_per_hour", "", "found %s beside control = \"continuous\", expected 60 min or none", c.written(v.Ref, "minutes_per_hour", *v.MinutesPerHour))
		}
		if part {
			c.report(v.Ref, "on_time", "", "found %s of %s beside control = \"continuous\", expected the whole cycle or none", c.written(v.Ref, "on_time", *v.OnTime), c.written(v.Ref, "cycle", *v.Cycle))
		}
	}
}

// vents refuses an electric appliance with a vent for what it does not burn. That
// nothing vents it is so, and may be said.
func (c *checker) vents() {
	for _, a := range c.design.Appliances {
		if a.Fuel == nil || a.Vent == nil || *a.Fuel != "electric" || *a.Vent == "unvented" {
			continue
		}
		c.report(a.Ref, "vent", "say what the appliance burns where it has a vent",
			`found %q beside fuel = "electric", expected no vent: nothing burns there`, *a.Vent)
	}
}

// measured refuses two measured flows of one terminal.
func (c *checker) measured() {
	if c.design.Commissioning == nil {
		return
	}
	seen := map[string]bool{}
	for _, m := range c.design.Commissioning.Measured {
		if m.Terminal == nil {
			continue
		}
		if seen[m.Terminal.ID] {
			c.report(m.Ref, "terminal", "", "found %q a second time, expected one measured flow for each terminal", m.Terminal.ID)
		}
		seen[m.Terminal.ID] = true
	}
}

// climate refuses a wet-bulb temperature above the dry-bulb temperature.
func (c *checker) climate() {
	d := c.design.Dwelling
	if d == nil || d.SummerWetBulb == nil || d.SummerOutdoor == nil {
		return
	}
	if q.Compare(float64(*d.SummerWetBulb), float64(*d.SummerOutdoor)) > 0 {
		c.report(d.Ref, "summer_wet_bulb", "", "found %s, expected at most %s, the summer_outdoor temperature",
			c.written(d.Ref, "summer_wet_bulb", *d.SummerWetBulb), c.print(*d.SummerOutdoor))
	}
}
