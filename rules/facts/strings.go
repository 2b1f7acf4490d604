package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/site"
	"github.com/ventlint/ventlint/rules/expression"
)

// mostLed bounds the work of strings around one building: as many as 1600 around
// a house of 12 walls, some seconds at most. No house needs that.
const mostLed = 20_000

// Taut is the string between two things that stays outside the building, found
// once for a pair. What cannot be found although nothing is missing is an
// *expression.Undetermined error.
func (f *Facts) Taut(a, b design.Placed) (site.Measurement, error) {
	pair := [2]design.Placed{a, b}
	if m, done := f.strings[pair]; done {
		return m, nil
	}
	if f.led >= mostLed {
		through, err := f.Site.Through(a, b)
		if err == nil && through {
			err = &expression.Undetermined{Reason: "more strings run around the building than the program follows: a person must judge"}
		}
		if err != nil {
			return site.Measurement{}, forAPerson(err)
		}
	}
	m, err := f.Site.TautMeasure(a, b)
	if m.Through {
		f.led += len(f.Design.Walls)
		f.strings[pair] = m
	}
	return m, forAPerson(err)
}

func (f *Facts) taut(a, b design.Placed) (q.Length, error) {
	m, err := f.Taut(a, b)
	return m.Length, err
}

func (f *Facts) throughBuilding(a, b design.Placed) (bool, error) {
	through, err := f.Site.Through(a, b)
	return through, forAPerson(err)
}
