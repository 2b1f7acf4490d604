package envelope

import (
	"cmp"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Credit is what infiltration takes off the fan flow that ASHRAE 62.2 requires.
type Credit struct {
	Required     q.Flow  // total ventilation rate Qtot, above 0
	Infiltration q.Flow  // effective yearly infiltration Qinf
	Exterior     q.Ratio // Aext: share of the envelope not attached to dwellings or garages; 1 when detached
	Capped       bool    // no more than 2/3 of Required counts
	Unbalanced   bool    // exhaust-only or supply-only; asked by the 2019 edition alone
}

// maximumShare is the cap on infiltration, for new dwellings under 62.2-2013 and
// 2016; existing dwellings are exempt (memory), and whether later editions keep
// it could not be read.
const maximumShare = 2.0 / 3

// Counted is the infiltration that counts: Qinf, or 2/3 Qtot where the cap is on
// and lower. Source: ASHRAE 62.2-2013 and 2016, secondary.
func (c Credit) Counted() (q.Flow, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	return c.counted(), nil
}

// Fan2013 is the fan flow left by 62.2-2013 and 2016: Qtot - Qinf Aext, at least
// 0. Balanced and unbalanced systems are alike. Source: Uniform Mechanical Code,
// appendix E, equation E 605.1.3.3; the floor of 0 is common practice.
func (c Credit) Fan2013() (q.Flow, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	return max(0, c.Required-c.counted()*q.Flow(c.Exterior)), nil
}

// Fan2019 is the fan flow left by 62.2-2019: Qtot - phi Qinf Aext, at least 0, with
// phi = 1 for balanced systems and Qinf/Qtot for unbalanced ones. Source: ASHRAE
// 62.2-2019 equation 4-2, secondary; that phi leaves Aext out is not confirmed.
func (c Credit) Fan2019() (q.Flow, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	phi := q.Flow(1)
	if c.Unbalanced {
		phi = c.counted() / c.Required
	}
	return max(0, c.Required-phi*c.counted()*q.Flow(c.Exterior)), nil
}

func (c Credit) counted() q.Flow {
	if c.Capped {
		return min(c.Infiltration, maximumShare*c.Required)
	}
	return c.Infiltration
}

func (c Credit) check() error {
	return cmp.Or(
		bounds.Check("required flow", c.Required, 1e-6, mostFlow),
		checkFlow("infiltration", c.Infiltration),
		bounds.Check("exterior share of the envelope", c.Exterior, 0, 1))
}
