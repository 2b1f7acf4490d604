package airflow

import (
	"cmp"
	"fmt"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Fitting is a number of like fittings in a section. Each takes Coefficient
// velocity pressures of the section and as much as EquivalentLength of straight
// duct, fully stretched; usually one of the two is given.
type Fitting struct {
	Name             string
	Count            int      // 1 to 1000
	Coefficient      float64  // -10 to 10 000; below zero where the fitting gives pressure back
	EquivalentLength q.Length // 0 to 1000 m
	Miter            bool     // the coefficient is that of high Reynolds numbers; see MiterFactor
}

const mostFittings = 1000

func (f Fitting) check() error {
	err := cmp.Or(
		bounds.Check("count", float64(f.Count), 1, mostFittings),
		bounds.Check("loss coefficient", f.Coefficient, -10, 10_000),
		bounds.Check("equivalent length", f.EquivalentLength, 0, 1000))
	if err == nil && f.Miter && f.Coefficient < 0 {
		err = &bounds.Error{What: "loss coefficient of a miter", Value: f.Coefficient, Low: 0.0, High: 10_000.0}
	}
	if err != nil {
		return fmt.Errorf("fitting %q: %w", f.Name, err)
	}
	return nil
}
