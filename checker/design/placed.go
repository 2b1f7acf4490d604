package design

// Placed is anything with a place on the site: an opening, a source, an
// opening into the building, or a plan line.
type Placed interface{ placed() }

func (*Opening) placed()         {}
func (*Source) placed()          {}
func (*BuildingOpening) placed() {}
func (*Line) placed()            {}
