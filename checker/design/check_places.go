package design

import (
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// place is where one thing of the site is, and where the file says so.
type place struct {
	ref   document.Ref
	where *Placement
}

// placed lists the things that have a place.
func placed(d *Design) []place {
	list := make([]place, 0, len(d.BuildingOpenings)+len(d.Openings)+len(d.Sources))
	for _, o := range d.BuildingOpenings {
		list = append(list, place{o.Ref, &o.Placement})
	}
	for _, o := range d.Openings {
		list = append(list, place{o.Ref, &o.Placement})
	}
	for _, s := range d.Sources {
		list = append(list, place{s.Ref, &s.Placement})
	}
	return list
}

func (c *checker) places() {
	for _, p := range c.placed {
		c.onePlace(p)
		c.along(p)
		c.outline(p)
		c.oneShape(p.ref)
		c.onWall(p)
	}
	c.points()
}

// points refuses a source that is a point and has an extent.
func (c *checker) points() {
	for _, s := range c.design.Sources {
		if s.Point == nil || !*s.Point {
			continue
		}
		for _, key := range []string{"diameter", "width", "height", "along", "outline"} {
			if s.Given(key) {
				c.report(s.Ref, "point", "", "found point = true beside %s, expected one of the two", key)
				break
			}
		}
	}
}

// onePlace refuses a thing that is in two places at once, and keys that say
// nothing where it is.
func (c *checker) onePlace(p place) {
	given := ""
	for _, key := range []string{"wall", "at", "along", "outline"} {
		switch {
		case !p.ref.Given(key):
		case given != "":
			c.report(p.ref, key, "", "found %s beside %s, expected one place", key, given)
			return
		default:
			given = key
		}
	}
	if onRoof := p.where.Roof != nil && *p.where.Roof; onRoof {
		if given != "" && given != "at" {
			c.report(p.ref, "roof", "", "found roof = true beside %s, expected one place", given)
			return
		}
		given = "roof"
	}
	c.strayKeys(p, given)
}

// stray are the measures that belong to another sort of place. The ground under a
// thing need not be that at a wall, so that above_grade counts everywhere.
var stray = map[string][]string{
	"wall":    {"level"},
	"roof":    {"from_left"},
	"at":      {"from_left"},
	"along":   {"from_left", "diameter", "width", "height"},
	"outline": {"from_left", "diameter", "width", "height"},
}

// strayKeys refuses measures that would count for nothing.
func (c *checker) strayKeys(p place, given string) {
	for _, key := range stray[given] {
		if p.ref.Given(key) {
			c.report(p.ref, key, "", "found %s, which says nothing of a place given by %s", key, given)
		}
	}
}

// mostPoints is how many points a line or an area may have: each is measured
// against every opening.
const mostPoints = 200

func (c *checker) along(p place) {
	switch n := len(p.where.Along); {
	case n == 1:
		c.report(p.ref, "along", "", "found 1 point, expected the 2 or more of a line")
	case n > mostPoints:
		c.report(p.ref, "along", "", "found %d points, expected at most %d", n, mostPoints)
	}
}

// outline refuses what is no area of the plan.
func (c *checker) outline(p place) {
	points := p.where.Outline
	switch n := len(points); {
	case n == 0:
		return
	case n < 3:
		c.report(p.ref, "outline", "", "found %d points, expected the 3 or more of an area", n)
		return
	case n > mostPoints:
		c.report(p.ref, "outline", "", "found %d points, expected at most %d", n, mostPoints)
		return
	}
	sides := ringOf(points)
	if area := sides.area(); area <= joint*joint && -area <= joint*joint {
		c.report(p.ref, "outline", "", "the outline has no area, expected points around one")
		return
	}
	if i, j, crossed := sides.crossing(); crossed {
		c.report(p.ref, "outline", "", "the outline crosses or touches itself: its side %d meets side %d", j+1, i+1)
	}
}

// oneShape refuses what is round and of two sides at once.
func (c *checker) oneShape(ref document.Ref) {
	if !ref.Given("diameter") {
		return
	}
	for _, key := range []string{"width", "height", "flat_oval"} {
		if ref.Given(key) {
			c.report(ref, "diameter", "", "found a diameter beside a %s, expected a round shape or one of two sides", key)
			return
		}
	}
}

// onWall refuses a shape that reaches beyond its wall.
func (c *checker) onWall(p place) {
	w := p.where
	wall := w.Wall.Target()
	if wall == nil {
		return
	}
	if length, ok := wall.length(); ok && w.FromLeft != nil && *w.FromLeft >= 0 {
		half := halfOf(w.Width, w.Diameter)
		if left, right := *w.FromLeft-half, *w.FromLeft+half; beyond(-left) || beyond(right-length) {
			c.report(p.ref, "from_left", "", "reaches from %s to %s along %s, expected within 0 and %s",
				c.print(left), c.print(right), Label(wall), c.print(length))
		}
	}
	if wall.Height != nil && w.AboveGrade != nil {
		if top := *w.AboveGrade + halfOf(w.Height, w.Diameter); beyond(top - *wall.Height) {
			c.report(p.ref, "above_grade", "", "reaches up to %s, expected at most %s, the height of %s",
				c.print(top), c.print(*wall.Height), Label(wall))
		}
	}
}

// halfOf is half of the side or diameter that is given; zero without either.
func halfOf(side, diameter *q.Length) q.Length {
	switch {
	case side != nil:
		return *side / 2
	case diameter != nil:
		return *diameter / 2
	}
	return 0
}

// beyond tells whether something reaches further than rounding explains.
func beyond(by q.Length) bool { return by > 0.001 }
