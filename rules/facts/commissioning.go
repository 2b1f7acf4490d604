package facts

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// commissioningLines hold what was measured against the design and against itself.
// What was not measured has no line.
func (f *Facts) commissioningLines() []Line {
	c := f.Design.Commissioning
	if c == nil {
		return nil
	}
	var lines []Line
	for _, s := range []side{supplySide, extractSide} {
		lines = append(lines, f.measuredSide(c, s)...)
	}
	if c.SupplyFlow != nil && c.ExtractFlow != nil {
		for _, a := range streamAllowances {
			lines = append(lines, *f.streamsApart(c, a).line)
		}
	}
	for _, m := range c.Measured {
		if m.Flow != nil {
			lines = append(lines, *f.measuredTerminal(m).line)
		}
	}
	return append(lines, f.measuredPressures(c)...)
}

// measuredSide is the measured flow of a side, and that of its terminals together.
func (f *Facts) measuredSide(c *design.Commissioning, s side) []Line {
	var lines []Line
	measured := s.flow(c.SupplyFlow, c.ExtractFlow)
	if measured != nil {
		lines = append(lines, *f.aboveDesign(c, s).line, *f.offDesign(c, s).line)
	}
	for _, m := range c.Measured {
		if m.Flow != nil && m.Terminal.To.Airstream == s.indoor {
			lines = append(lines, *f.terminalsTogether(c, s).line)
			if measured != nil {
				lines = append(lines, *f.apartFromTerminals(c, s).line)
			}
			break
		}
	}
	return lines
}

// measuredFlow takes the measured flow of a side as an input.
func measuredFlow(w *working, c *design.Commissioning, s side) q.Flow {
	return given(w, "measured "+s.name, s.flow(c.SupplyFlow, c.ExtractFlow), c.Ref, s.name+"_flow")
}

// designFlow takes the flows of all ventilators that have a side as inputs.
func (f *Facts) designFlow(w *working, s side) q.Flow {
	var sum q.Flow
	units := f.unitsWith(s)
	for _, unit := range units {
		sum += given(w, unit.ID+" design "+s.name, s.flow(unit.SupplyFlow, unit.ExtractFlow), unit.Ref, s.name+"_flow")
	}
	if len(units) == 0 {
		w.trouble = fmt.Errorf("no ventilator of the design moves %s air", s.name)
	}
	return sum
}

// unitsWith are the ventilators that have a side.
func (f *Facts) unitsWith(s side) []*design.Ventilator {
	var list []*design.Ventilator
	for _, unit := range f.Design.Ventilators {
		for _, has := range sides(unit) {
			if has.name == s.name {
				list = append(list, unit)
			}
		}
	}
	return list
}

// aboveDesign is how much more than its design flow a side moves.
func (f *Facts) aboveDesign(c *design.Commissioning, s side) result[q.Flow] {
	line := Line{Name: s.name + " flow, measured above design", Formula: "measured - design, of all ventilators; negative: less than designed",
		Source: "difference; Approved Document F 2021 sections 4.1 to 4.3, second-hand, wants none below design, and IRC 2021 N1103.6.3 none below the least rate"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		measured, designed := measuredFlow(w, c, s), f.designFlow(w, s)
		return func() (q.Flow, error) { return measured - designed, nil }
	})
}

// terminalsTogether is the sum of what was measured at the terminals of a side; one
// that was not measured is missed.
func (f *Facts) terminalsTogether(c *design.Commissioning, s side) result[q.Flow] {
	line := Line{Name: s.name + " terminals, measured together", Formula: "sum of the measured flows", Source: "sum"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		var sum q.Flow
		read := map[*design.Terminal]bool{}
		for _, m := range c.Measured {
			if m.Terminal.To.Airstream == s.indoor {
				sum += given(w, m.Terminal.ID, m.Flow, m.Ref, "flow")
				read[m.Terminal.To] = true
			}
		}
		for _, t := range f.Design.Terminals {
			if t.Airstream == s.indoor && !read[t] {
				w.lack(document.Missing{Ref: c.Ref, Key: "measured", Thing: design.Label(t)})
			}
		}
		return func() (q.Flow, error) { return sum, nil }
	})
}

// apartFromTerminals is what a side moves beyond what its terminals were measured at:
// leaks of the ducts, and errors of the readings.
func (f *Facts) apartFromTerminals(c *design.Commissioning, s side) result[q.Flow] {
	line := Line{Name: s.name + " flow, measured above that of its terminals", Formula: "measured - terminals together; leaks of the ducts and errors of reading",
		Source: "difference; no source was found that names a tolerance"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		measured := measuredFlow(w, c, s)
		together := from(w, "terminals together", f.terminalsTogether(c, s))
		return func() (q.Flow, error) { return measured - together, nil }
	})
}
