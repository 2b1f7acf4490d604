package facts

// Section is the computed values of one subject.
type Section struct {
	Title string
	Lines []Line
}

// Worksheet computes every value that rules can ask for, in the order in which
// they follow from each other, each with its inputs.
func (f *Facts) Worksheet() []Section {
	f = f.listed()
	var kept []Section
	for _, s := range []Section{
		{"Rates", f.rateLines()},
		{"Air delivered", f.deliveryLines()},
		{"Distances of intakes", f.distanceLines()},
		{"Ducts and fans", f.ductLines()},
		{"House pressure and infiltration", f.pressureLines()},
		{"Moist air and the core", f.coreLines()},
		{"Commissioning", f.commissioningLines()},
	} {
		if len(s.Lines) > 0 {
			kept = append(kept, s)
		}
	}
	return kept
}

// listed are the facts of the same design with lines that list their inputs.
func (f *Facts) listed() *Facts {
	listed := Of(f.Design)
	listed.listing = true
	return listed
}

func (f *Facts) deliveryLines() []Line {
	var lines []Line
	for _, unit := range f.Design.Ventilators {
		if unit.Kind != "exhaust-fan" {
			lines = append(lines, *f.averageSupply(unit).line, *f.airChanges(unit).line, *f.perPerson(unit).line)
		}
		if unit.Kind != "supply-fan" {
			lines = append(lines, *f.averageExtract(unit).line)
		}
		if hasCore(unit) {
			lines = append(lines, *f.netOutdoorAir(unit).line)
		}
		lines = append(lines, *f.efficacy(unit).line)
	}
	return lines
}

func (f *Facts) coreLines() []Line {
	var lines []Line
	for _, unit := range f.Design.Ventilators {
		if !hasCore(unit) {
			continue
		}
		if lines == nil {
			lines = append(lines, *f.airPressure().line, *f.indoorDewPoint().line)
		}
		lines = append(lines, *f.effectiveness(unit).line, *f.entering(unit).line)
		if preheats(unit) {
			lines = append(lines, *f.preheatPower(unit).line)
		}
		lines = append(lines, *f.supplyTemperature(unit, winter).line, *f.dryExhaust(unit).line, *f.aboveDewPoint(unit).line,
			*f.heatRecovered(unit).line, *f.moistureRecovered(unit).line,
			*f.condenses(unit).line, *f.frostOnset(unit).line, *f.frostMargin(unit).line, *f.supplyTemperature(unit, summer).line)
	}
	return lines
}
