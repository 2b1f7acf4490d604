package drawing

import (
	"fmt"
	"slices"

	"github.com/ventlint/ventlint/checker/airflow"
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/facts"
)

// ductRow is one duct or end of a tree, or the heading of one side of the unit.
type ductRow struct {
	cells    []string
	parent   int // row that it hangs on; -1 of a heading
	depth    int
	critical bool
}

// Ducts draws the ducts of one side of a ventilator as a tree from the unit to every
// terminal and opening, with size, flow, velocity and loss of each, the critical path
// heavier than the others, and the loss that the dampers of the others must add. A
// large tree takes several sheets. Where the losses are not known, one drawing without
// SVG tells why. key prefixes the keys of the drawings.
func Ducts(d *design.Design, a facts.Airway, key string) []Drawing {
	title := a.Side + " ducts of " + design.Label(a.Unit)
	if a.Losses == nil {
		return []Drawing{{Key: key, Title: title, Text: "Not drawn, since the losses are not known.", Notes: []string{a.Why.Error()}}}
	}
	t := &ductTree{design: d, units: unitsOf(d), airway: a}
	outdoor, indoor := "between outdoors and the unit", "between the unit and the rooms"
	if a.Side == "supply" {
		t.side(a.Losses.Inlet, outdoor)
		t.side(a.Losses.Outlet, indoor)
	} else {
		t.side(a.Losses.Inlet, indoor)
		t.side(a.Losses.Outlet, outdoor)
	}
	return t.sheets(key, title)
}

// ductTree is the ducts of one side of a ventilator as rows.
type ductTree struct {
	design *design.Design
	units  q.System
	airway facts.Airway
	rows   []ductRow
	said   string
}

// side adds the ducts between the unit and the ends that lie on one side of it.
func (t *ductTree) side(l airflow.SideLoss, name string) {
	if len(l.Ends) == 0 {
		return
	}
	heading := len(t.rows)
	t.rows = append(t.rows, ductRow{cells: []string{name}, parent: -1})
	b := branches{runs: map[string]airflow.RunLoss{}, below: map[string][]string{}, ends: map[string][]airflow.EndLoss{}}
	for _, r := range l.Runs {
		b.runs[r.ID] = r
	}
	for _, e := range l.Ends {
		b.add(e)
		if e.ID == l.Critical {
			b.critical = e
			t.said += fmt.Sprintf(" The critical path %s leads to %s and loses %s.", name, t.label(e.ID), q.Format(e.Sum, t.units))
		}
	}
	t.hang(b, "", heading, 1)
}

// branches tells what hangs on each duct; on "" hangs what joins the unit.
type branches struct {
	runs     map[string]airflow.RunLoss
	below    map[string][]string
	ends     map[string][]airflow.EndLoss
	critical airflow.EndLoss
}

func (b *branches) add(e airflow.EndLoss) {
	parent := ""
	for _, run := range e.Path {
		if !slices.Contains(b.below[parent], run) {
			b.below[parent] = append(b.below[parent], run)
		}
		parent = run
	}
	b.ends[parent] = append(b.ends[parent], e)
}

// hang adds the rows of what hangs on a duct.
func (t *ductTree) hang(b branches, on string, row, depth int) {
	for _, end := range b.ends[on] {
		critical := end.ID == b.critical.ID
		t.rows = append(t.rows, ductRow{t.endCells(end, critical), row, depth, critical})
	}
	for _, id := range b.below[on] {
		at := len(t.rows)
		t.rows = append(t.rows, ductRow{t.runCells(b.runs[id]), row, depth, slices.Contains(b.critical.Path, id)})
		t.hang(b, id, at, depth+1)
	}
}

func (t *ductTree) label(id string) string {
	switch thing := t.design.Find(id).(type) {
	case *design.Opening:
		return called(string(thing.Kind), id)
	case *design.Terminal:
		return called("terminal", id)
	}
	return id
}

func (t *ductTree) runCells(r airflow.RunLoss) []string {
	cells := []string{r.ID, "", "", q.Format(r.Flow, t.units), "", q.Format(r.Loss, t.units)}
	if duct, ok := t.design.Find(r.ID).(*design.Duct); ok {
		cells[1], cells[2] = t.size(duct), t.length(duct.Length)
	}
	if len(r.Sections) > 0 {
		cells[4] = q.Format(r.Sections[0].Velocity, t.units)
	}
	return cells
}

func (t *ductTree) endCells(e airflow.EndLoss, critical bool) []string {
	damper := q.Format(e.Damper, t.units)
	if critical {
		damper = "critical"
	}
	return []string{t.label(e.ID), "", "", q.Format(e.Flow, t.units), "", q.Format(e.Loss, t.units), q.Format(e.Sum, t.units), damper}
}

func (t *ductTree) size(d *design.Duct) string {
	if d.Diameter != nil {
		return t.length(d.Diameter)
	}
	return t.length(d.Width) + " x " + t.length(d.Height)
}

func (t *ductTree) length(l *q.Length) string {
	if l == nil {
		return ""
	}
	return q.Format(*l, t.units)
}
