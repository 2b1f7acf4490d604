package design

import "github.com/ventlint/ventlint/checker/document"

// The most that a file may hold of each kind. They are far beyond one dwelling, and
// bound the work of a review.
const (
	mostRooms       = 300
	mostLines       = 100
	mostOpenings    = 500
	mostSources     = 2000
	mostVentilators = 30
	mostFilters     = 20
	mostTerminals   = 300
	mostDucts       = 300
	mostFittings    = 200
	mostAppliances  = 100
	mostStated      = 2000
	mostVariances   = 500
)

// crowds refuses a file with more of something than any dwelling has.
func (c *checker) crowds() {
	d := c.design
	crowd(c, d.Rooms, mostRooms)
	crowd(c, d.Lines, mostLines)
	crowd(c, d.BuildingOpenings, mostOpenings)
	crowd(c, d.Openings, mostOpenings)
	crowd(c, d.Sources, mostSources)
	crowd(c, d.Ventilators, mostVentilators)
	crowd(c, d.Terminals, mostTerminals)
	crowd(c, d.Ducts, mostDucts)
	crowd(c, d.Appliances, mostAppliances)
	crowd(c, d.StatedDistances, mostStated)
	crowd(c, d.Variances, mostVariances)
	for _, v := range d.Ventilators {
		crowd(c, v.Filters, mostFilters)
	}
	for _, duct := range d.Ducts {
		crowd(c, duct.Fittings, mostFittings)
	}
	if d.Commissioning != nil {
		crowd(c, d.Commissioning.Measured, mostTerminals)
	}
}

// crowd reports the first table of a list that is one too many.
func crowd[T interface{ Self() document.Ref }](c *checker, list []T, most int) {
	if len(list) > most {
		c.report(list[most].Self(), "id", "a file holds one dwelling", "found %d tables like this one, expected at most %d", len(list), most)
	}
}
