package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// terminalsIn is unknown as long as the room of any terminal is: it could be
// this one.
func (f *Facts) terminalsIn(room *design.Room) ([]*design.Terminal, error) {
	var list []*design.Terminal
	for _, t := range f.Design.Terminals {
		if t.Room == nil {
			return nil, &document.Missing{Ref: t.Ref, Key: "room"}
		}
		if t.Room.To == room {
			list = append(list, t)
		}
	}
	return list, nil
}

func (f *Facts) hasSupply(room *design.Room) (bool, error)  { return f.has(room, "supply-air") }
func (f *Facts) hasExtract(room *design.Room) (bool, error) { return f.has(room, "extract-air") }

func (f *Facts) has(room *design.Room, stream design.Airstream) (bool, error) {
	var missing error
	for _, t := range f.Design.Terminals {
		switch {
		case t.Airstream != stream:
		case t.Room == nil:
			missing = &document.Missing{Ref: t.Ref, Key: "room"}
		case t.Room.To == room:
			return true, nil
		}
	}
	return false, missing
}

func (f *Facts) roomVolume(room *design.Room) (q.Volume, error) {
	switch {
	case room.Area == nil:
		return 0, &document.Missing{Ref: room.Ref, Key: "area"}
	case room.Height == nil:
		return 0, &document.Missing{Ref: room.Ref, Key: "height"}
	}
	return q.Volume(float64(*room.Area) * float64(*room.Height)), nil
}
