package facts

import (
	"github.com/ventlint/ventlint/checker/envelope"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const restated = "public research script that restates ASHRAE 62.2-2019 section 4"

// totalRate is the rate of ASHRAE 62.2 before any credit.
func (f *Facts) totalRate() result[q.Flow] {
	return f.rateBy("total rate, ASHRAE 62.2", "0.03 cfm/ft2 x A + 7.5 cfm x (N + 1), N at least 1", "ASHRAE 62.2 from 2013 on, by a reprint in the Uniform Mechanical Code", 0.03, 1)
}

// afterCredit is the fan flow that a form of the credit leaves of the total rate.
func (f *Facts) afterCredit(form, formula, source string, infiltration result[q.Flow], left func(envelope.Credit) (q.Flow, error)) result[q.Flow] {
	line := Line{Name: "fan flow after the credit, " + form, Formula: formula, Source: source,
		Note: "counts only where the leakage was tested"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		total := from(w, "total", f.totalRate())
		leaks := from(w, "infiltration", infiltration)
		d := f.Design.Dwelling
		attached := given(w, "attached share", d.AttachedShare, d.Ref, "attached_share")
		return func() (q.Flow, error) {
			return left(envelope.Credit{Required: total, Infiltration: leaks, Exterior: 1 - attached})
		}
	})
}

// creditLines are what the credit leaves by each edition; a house without a leakage
// figure has none.
func (f *Facts) creditLines() []Line {
	if f.Design.Dwelling.Leakage == nil {
		return nil
	}
	capped := func(c envelope.Credit) (q.Flow, error) { c.Capped = true; return c.Fan2013() }
	unbalanced := func(c envelope.Credit) (q.Flow, error) { c.Unbalanced = true; return c.Fan2019() }
	return []Line{
		*f.leakageArea().line, *f.normalizedLeakage().line, *f.normalizedInfiltration().line,
		*f.afterCredit("62.2-2013 and 2016", "total - min(infiltration, 2/3 x total) x (1 - attached share)",
			"Uniform Mechanical Code, appendix E, equation E 605.1.3.3; the cap by secondary documents", f.normalizedInfiltration(), capped).line,
		*f.afterCredit("62.2-2019, balanced system", "total - infiltration x (1 - attached share)", restated, f.infiltration(), envelope.Credit.Fan2019).line,
		*f.afterCredit("62.2-2019, other systems", "total - infiltration / total x infiltration x (1 - attached share)", restated, f.infiltration(), unbalanced).line,
	}
}
