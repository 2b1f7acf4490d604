package design

import (
	"strconv"

	"github.com/ventlint/ventlint/checker/document"
)

// Things lists pointers to all things that have an id, in the order of the
// fields of Design.
func (d *Design) Things() []any {
	list := make([]any, 0, len(d.Rooms)+len(d.Walls)+len(d.Lines)+len(d.BuildingOpenings)+len(d.Openings)+
		len(d.Sources)+len(d.Ventilators)+len(d.Terminals)+len(d.Ducts)+len(d.Appliances))
	list = appendAll(list, d.Rooms)
	list = appendAll(list, d.Walls)
	list = appendAll(list, d.Lines)
	list = appendAll(list, d.BuildingOpenings)
	list = appendAll(list, d.Openings)
	list = appendAll(list, d.Sources)
	list = appendAll(list, d.Ventilators)
	list = appendAll(list, d.Terminals)
	list = appendAll(list, d.Ducts)
	return appendAll(list, d.Appliances)
}

func appendAll[T any](list []any, things []*T) []any {
	for _, t := range things {
		list = append(list, t)
	}
	return list
}

// named is any struct that embeds Thing.
type named interface{ thing() *Thing }

func (t *Thing) thing() *Thing { return t }

// Find gives a pointer to the thing with an id; nil when the design has none. It
// knows the things that the design had when it was loaded.
func (d *Design) Find(id string) any { return d.byID[id] }

// Refer gives where a part of a design stands in its file. thing is a pointer
// to any struct of this package that embeds document.Ref.
func Refer(thing any) document.Ref {
	if t, ok := thing.(interface{ Self() document.Ref }); ok {
		return t.Self()
	}
	return document.Ref{}
}

// Label is what people call a part of a design: `intake "fresh"`,
// `source "dryer" (dryer)`.
func Label(thing any) string {
	switch t := thing.(type) {
	case *Room:
		return label("room", t.ID, string(t.Use))
	case *Wall:
		return label("wall", t.ID, "")
	case *Line:
		return label("line", t.ID, string(t.Kind))
	case *BuildingOpening:
		return label(string(t.Kind), t.ID, "")
	case *Opening:
		return label(string(t.Kind), t.ID, "")
	case *Source:
		return label("source", t.ID, string(t.Kind))
	case *Ventilator:
		return label("ventilator", t.ID, string(t.Kind))
	case *Terminal:
		return label("terminal", t.ID, string(t.Airstream))
	case *Duct:
		return label("duct", t.ID, string(t.Airstream))
	case *Appliance:
		return label("appliance", t.ID, string(t.Kind))
	}
	return unnamed(thing)
}

func label(noun, id, kind string) string {
	if kind == "" {
		return noun + " " + strconv.Quote(id)
	}
	return noun + " " + strconv.Quote(id) + " (" + kind + ")"
}

// unnamed is the label of a part without an id: its place in the file.
func unnamed(thing any) string {
	if path := Refer(thing).Path(); path != "" {
		return path
	}
	return "design"
}
