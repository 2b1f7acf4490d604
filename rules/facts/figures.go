package facts

import "slices"

// Figures are the lines that a reader of a review asks for first: what the fans
// deliver, what they must overcome, the pressure of the house, and the air that
// leaves the core in winter. A value that is not known is left out.
func (f *Facts) Figures() []*Line {
	var all []*Line
	for _, unit := range f.Design.Ventilators {
		for _, s := range sides(unit) {
			for _, name := range settings(unit) {
				all = append(all, f.delivered(unit, s, name).line)
			}
			all = append(all, f.externalLoss(unit, s).line, f.criticalEnd(unit, s).line)
		}
	}
	if len(f.Design.Ventilators) > 0 {
		all = append(all, f.housePressure(states[0]).line, f.worstPressure().line)
	}
	for _, unit := range f.Design.Ventilators {
		if hasCore(unit) {
			all = append(all, f.supplyTemperature(unit, winter).line, f.frostMargin(unit).line)
		}
	}
	return slices.DeleteFunc(all, func(l *Line) bool { return l.Value == nil })
}
