package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const secondsPerHour = 3600

// runShare takes continuous control as the whole time, then the stated cycle,
// then the minutes of each hour.
func (f *Facts) runShare(unit *design.Ventilator) (q.Ratio, error) {
	switch {
	case unit.Control == nil:
		return 0, &document.Missing{Ref: unit.Ref, Key: "control"}
	case *unit.Control == "continuous":
		return 1, nil
	case unit.OnTime != nil && unit.Cycle != nil:
		return q.Ratio(*unit.OnTime / *unit.Cycle), nil
	case unit.OnTime != nil:
		return 0, &document.Missing{Ref: unit.Ref, Key: "cycle"}
	case unit.MinutesPerHour != nil:
		return q.Ratio(*unit.MinutesPerHour / secondsPerHour), nil
	}
	return 0, &document.Missing{Ref: unit.Ref, Key: "minutes_per_hour"}
}

// filters are those of a unit. A design that says nothing of filters does not say
// that there are none; filter = [] does.
func (f *Facts) filters(unit *design.Ventilator) ([]*design.Filter, error) {
	if len(unit.Filters) == 0 && !unit.Given("filter") {
		return nil, &document.Missing{Ref: unit.Ref, Key: "filter"}
	}
	return unit.Filters, nil
}

func (f *Facts) hydraulicDiameter(duct *design.Duct) (q.Length, error) {
	switch {
	case duct.Diameter != nil:
		return *duct.Diameter, nil
	case duct.Width == nil && duct.Height == nil:
		return 0, &document.Missing{Ref: duct.Ref, Key: "diameter"}
	case duct.Width == nil:
		return 0, &document.Missing{Ref: duct.Ref, Key: "width"}
	case duct.Height == nil:
		return 0, &document.Missing{Ref: duct.Ref, Key: "height"}
	}
	w, h := float64(*duct.Width), float64(*duct.Height)
	return q.Length(2 * w * h / (w + h)), nil
}
