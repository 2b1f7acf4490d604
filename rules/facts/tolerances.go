package facts

import (
	"errors"
	"math"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// allowance is how far apart two measured or designed values may be by its source.
// Where it has a gap, either suffices.
type allowance struct {
	name, formula, source string
	share                 q.Ratio
	gap                   q.Flow
	of                    func(supply, extract q.Flow) q.Flow // what the share is of
}

// streamAllowances are those of two streams. Sources disagree on what their 10 %
// are of.
var streamAllowances = []allowance{
	{"as a share of the supply", "|supply - extract| / supply",
		"IRC 2021 R202, balanced ventilation: 10 %; Washington amendments to the IRC 2021, M1505.4.1.4: 10 % or 5 cfm",
		0.10, 5 * cfm, func(supply, _ q.Flow) q.Flow { return supply }},
	{"as a share of the extract", "|supply - extract| / extract",
		"National Building Code of Canada 2020, 9.32.3.4.(8): 10 %",
		0.10, 0, func(_, extract q.Flow) q.Flow { return extract }},
	{"each from their average", "|supply - extract| / (supply + extract)",
		"IRC 2021 and 2024 R202, balanced ventilation system: 10 %",
		0.10, 0, func(supply, extract q.Flow) q.Flow { return supply + extract }},
	{"as a share of the larger", "|supply - extract| / larger of the two",
		"Passive House building criteria 9f, 3.2.5, second-hand: 10 %; what it is of is not printed, the larger is taken",
		0.10, 0, func(supply, extract q.Flow) q.Flow { return max(supply, extract) }},
}

var designAllowance = allowance{source: "ENERGY STAR rater field checklist, item 7.1, second-hand: 15 % or 15 cfm", share: 0.15, gap: 15 * cfm}

// within words a tolerance and whether it is kept.
func (a allowance) within(off q.Ratio, gap q.Flow, units q.System) string {
	words := keeps(math.Abs(float64(off)), float64(a.share)) + q.Format(a.share, units)
	if a.gap > 0 {
		words += ", " + keeps(math.Abs(float64(gap)), float64(a.gap)) + q.Format(a.gap, units)
	}
	return words
}

func keeps(found, allowed float64) string {
	if q.Compare(found, allowed) > 0 {
		return "beyond "
	}
	return "within "
}

var errNothingToShare = errors.New("nothing to be a share of: the flow or pressure is zero")

// share is one value as a share of another.
func share[T ~float64](part, whole T) (q.Ratio, error) {
	if whole == 0 {
		return 0, errNothingToShare
	}
	return q.Ratio(part / whole), nil
}

// streamsApart is how far the measured streams are apart, by one source.
func (f *Facts) streamsApart(c *design.Commissioning, a allowance) result[q.Ratio] {
	line := Line{Name: "measured supply and extract apart, " + a.name, Formula: a.formula, Source: a.source}
	return compute(f, line, func(w *working) func() (q.Ratio, error) {
		supply, extract := measuredFlow(w, c, supplySide), measuredFlow(w, c, extractSide)
		return func() (q.Ratio, error) {
			apart := q.Flow(math.Abs(float64(supply - extract)))
			off, err := share(apart, a.of(supply, extract))
			if err == nil {
				w.line.Note = a.within(off, apart, f.units())
			}
			return off, err
		}
	})
}

// offDesign is how far the measured flow of a side is from its design.
func (f *Facts) offDesign(c *design.Commissioning, s side) result[q.Ratio] {
	line := Line{Name: s.name + " flow, measured off design", Formula: "(measured - design) / design", Source: designAllowance.source}
	return compute(f, line, func(w *working) func() (q.Ratio, error) {
		above, designed := from(w, "measured - design", f.aboveDesign(c, s)), f.designFlow(w, s)
		return func() (q.Ratio, error) {
			off, err := share(above, designed)
			if err == nil {
				w.line.Note = designAllowance.within(off, above, f.units())
			}
			return off, err
		}
	})
}

var terminalAllowance = allowance{source: "tolerance of balancing trades, from memory: 10 %", share: 0.10}

// measuredTerminal is how far a terminal is from its design flow.
func (f *Facts) measuredTerminal(m *design.Measured) result[q.Ratio] {
	t := m.Terminal.To
	line := Line{Name: "flow, measured off design", Of: f.label(t), Formula: "(measured - design) / design", Source: terminalAllowance.source}
	return compute(f, line, func(w *working) func() (q.Ratio, error) {
		measured := given(w, "measured", m.Flow, m.Ref, "flow")
		designed := given(w, "design", t.Flow, t.Ref, "flow")
		return func() (q.Ratio, error) {
			off, err := share(measured-designed, designed)
			if err == nil {
				w.line.Note = terminalAllowance.within(off, 0, f.units())
			}
			return off, err
		}
	})
}
