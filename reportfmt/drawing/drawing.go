package drawing

import (
	"fmt"
	"slices"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/site"
	"github.com/ventlint/ventlint/rules/facts"
)

// Drawing is one plan, elevation, duct tree or fan chart.
type Drawing struct {
	Key      string   // tells it from the others of its design, and prefixes the ids in the SVG
	Title    string   // such as `elevation of wall "north"`
	Text     string   // what it shows, for who cannot see it
	Notes    []string // what it does not show, and why
	Findings []int    // numbers of the findings that it shows, in rising order
	SVG      string   // one svg element, without an XML declaration

	height float64 // of the SVG, in pixels
}

// Finding is a result that a drawing may show, under the number that the report
// gives it.
type Finding struct {
	Number int
	Result *checker.Result
}

// Of gives every drawing of a reviewed design: the plan where anything has a
// place on it, and the elevation of each wall that bears something. prefix begins
// the key of each.
func Of(r *checker.Report, findings []Finding, prefix string) []Drawing {
	if r.Design == nil {
		return nil
	}
	s, m := site.New(r.Design), Mark(r, findings)
	var all []Drawing
	if plan := Plan(r.Design, s, m, prefix+"plan"); plan.SVG != "" {
		all = append(all, plan)
	}
	for i, w := range r.Design.Walls {
		if Bears(r.Design, w) {
			all = append(all, Elevation(r.Design, s, w, m, fmt.Sprintf("%selevation-%d", prefix, i+1)))
		}
	}
	return append(all, Airways(r.Design, prefix)...)
}

// Airways gives the duct trees and fan charts of a design, those of one side of a
// ventilator after each other.
func Airways(d *design.Design, prefix string) []Drawing {
	var all []Drawing
	for i, a := range facts.Of(d).Airways() {
		all = append(all, Ducts(d, a, fmt.Sprintf("%sducts-%d", prefix, i+1))...)
		if fan := Fan(d, a, fmt.Sprintf("%sfan-%d", prefix, i+1)); fan.SVG != "" {
			all = append(all, fan)
		}
	}
	return all
}

// DuctTrees gives the duct trees of a design; those that cannot be drawn are empty
// and say why.
func DuctTrees(d *design.Design) []Drawing {
	var all []Drawing
	for i, a := range facts.Of(d).Airways() {
		all = append(all, Ducts(d, a, fmt.Sprintf("ducts-%d", i+1))...)
	}
	return all
}

// Fans gives the fan charts of a design, those that can be drawn.
func Fans(d *design.Design) []Drawing {
	var all []Drawing
	for i, a := range facts.Of(d).Airways() {
		if fan := Fan(d, a, fmt.Sprintf("fan-%d", i+1)); fan.SVG != "" {
			all = append(all, fan)
		}
	}
	return all
}

// Bears tells whether anything is placed on a wall.
func Bears(d *design.Design, w *design.Wall) bool {
	return slices.ContainsFunc(things(d), func(t thing) bool { return t.wall() == w })
}

// unitsOf is the system that a design asks its reports to use.
func unitsOf(d *design.Design) quantity.System {
	if d.Project != nil && d.Project.Units == "SI" {
		return quantity.SI
	}
	return quantity.IP
}
