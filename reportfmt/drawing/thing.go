package drawing

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// role is what a thing is drawn as.
type role int

const (
	intake role = iota
	exhaust
	source
	buildingOpening
)

// thing is an opening, a source or a building opening with its place.
type thing struct {
	self  design.Placed
	id    string
	kind  string
	role  role
	where *design.Placement
}

// things lists what a design places, in the order of its file: what is drawn
// first lies beneath.
func things(d *design.Design) []thing {
	var all []thing
	for _, b := range d.BuildingOpenings {
		all = append(all, thing{b, b.ID, string(b.Kind), buildingOpening, &b.Placement})
	}
	for _, s := range d.Sources {
		all = append(all, thing{s, s.ID, string(s.Kind), source, &s.Placement})
	}
	for _, o := range d.Openings {
		r := exhaust
		if o.Kind == "intake" {
			r = intake
		}
		all = append(all, thing{o, o.ID, string(o.Kind), r, &o.Placement})
	}
	return all
}

func (t thing) wall() *design.Wall { return t.where.Wall.Target() }

func (t thing) onWall() bool { return t.where.Wall != nil }

// label is what people call a thing, beginning with what it is.
func (t thing) label() string { return called(t.kind, t.id) }

// called is "kind id", or one word where both are the same.
func called(kind, id string) string {
	if kind == id {
		return kind
	}
	return kind + " " + id
}

// size gives the sides of a thing, 0 for a source without any; missing names the
// key that an opening would have to give.
func (t thing) size() (width, height float64, round bool, missing string) {
	w := t.where
	switch {
	case w.Diameter != nil:
		return float64(*w.Diameter), float64(*w.Diameter), true, ""
	case w.Width == nil && w.Height == nil && t.role == source:
		return 0, 0, true, ""
	case w.Width == nil && w.Height == nil:
		return 0, 0, false, "diameter"
	case w.Width == nil:
		return 0, 0, false, "width"
	case w.Height == nil:
		return 0, 0, false, "height"
	}
	return float64(*w.Width), float64(*w.Height), false, ""
}

// lacks words a thing that cannot be drawn for want of a key.
func (t thing) lacks(key string) string {
	return fmt.Sprintf("%s is not drawn: it gives no %s", design.Label(t.self), key)
}

func metres(l *q.Length) float64 {
	if l == nil {
		return 0
	}
	return float64(*l)
}
