package facts

import (
	"math"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

var pressureAllowance = allowance{source: "trade practice, no source: 30 %; readings and stated losses are each good to 10 to 15 %", share: 0.30}

// measuredPressures compare what was read at the one unit of a side; at several it
// is not said which.
func (f *Facts) measuredPressures(c *design.Commissioning) []Line {
	var lines []Line
	for _, s := range []side{supplySide, extractSide} {
		read, units := s.read(c), f.unitsWith(s)
		if read != nil && len(units) == 1 {
			lines = append(lines, *f.pressureOff(c, units[0], s).line)
		}
	}
	return lines
}

// read is the pressure that was read on a side of a unit.
func (s side) read(c *design.Commissioning) *q.Pressure {
	if s.name == extractSide.name {
		return c.ExtractPressure
	}
	return c.SupplyPressure
}

// pressureOff is how far a pressure read at a unit is from what its ducts lose.
func (f *Facts) pressureOff(c *design.Commissioning, unit *design.Ventilator, s side) result[q.Ratio] {
	line := Line{Name: s.name + " side, pressure read off the computed one", Of: f.label(unit), Formula: "(read, without its sign - computed) / computed",
		Taken: "pressures were read with clean filters, at design flow", Source: pressureAllowance.source}
	return compute(f, line, func(w *working) func() (q.Ratio, error) {
		read := given(w, "read", s.read(c), c.Ref, s.name+"_pressure")
		computed := from(w, "computed", f.externalLoss(unit, s))
		return func() (q.Ratio, error) {
			off, err := share(q.Pressure(math.Abs(float64(read)))-computed, computed)
			if err == nil {
				w.line.Note = pressureAllowance.within(off, 0, f.units())
			}
			return off, err
		}
	})
}
