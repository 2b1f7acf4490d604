package facts

import (
	"github.com/ventlint/ventlint/checker/envelope"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// usualExponent is what is taken for a flow exponent that the test report does
// not give.
const usualExponent = envelope.DefaultExponent

// leakage is the power law of the envelope, from the blower-door figure.
func (f *Facts) leakage() result[envelope.Leakage] {
	line := Line{Name: "leakage of the envelope", Formula: "Q = Q50 x (dp / 50 Pa)^n", Source: "power law of the blower-door test, ASTM E779"}
	return compute(f, line, func(w *working) func() (envelope.Leakage, error) {
		flow := from(w, "Q50", f.flow50())
		exponent := usualExponent
		if l := f.Design.Dwelling.Leakage; l != nil && l.Exponent != nil {
			exponent = given(w, "n", l.Exponent, l.Ref, "exponent")
		} else {
			w.line.Taken = "a flow exponent of 0.65, the usual figure of houses, since none is given"
		}
		return func() (envelope.Leakage, error) { return envelope.FromFlow50(flow, exponent) }
	})
}

// flow50 is the flow at 50 Pa, as stated or from the air changes.
func (f *Facts) flow50() result[q.Flow] {
	line := Line{Name: "flow at 50 Pa", Formula: "as stated, or air changes at 50 Pa x volume", Source: "definition"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		d, l := f.Design.Dwelling, f.Design.Dwelling.Leakage
		switch {
		case l == nil:
			given[q.Flow](w, "", nil, d.Ref, "leakage")
			return nil
		case l.Flow50 != nil:
			flow := given(w, "flow", l.Flow50, l.Ref, "flow_50")
			return func() (q.Flow, error) { return flow, nil }
		}
		changes := given(w, "air changes", l.AirChanges50, l.Ref, "air_changes_50")
		volume := given(w, "volume", d.Volume, d.Ref, "volume")
		return func() (q.Flow, error) {
			law, err := envelope.FromAirChanges50(changes, volume, usualExponent)
			return law.Flow50(), err
		}
	})
}

// leakageArea is the effective leakage area at 4 Pa.
func (f *Facts) leakageArea() result[q.Area] {
	line := Line{Name: "effective leakage area", Formula: "Q50 x (4 Pa / 50 Pa)^n / square root of (2 x 4 Pa / 1.2041 kg/m3)",
		Source: "ASHRAE 62.2 and ASTM E779, from memory"}
	return compute(f, line, func(w *working) func() (q.Area, error) {
		law := f.law(w)
		return func() (q.Area, error) { return law().EffectiveArea(), nil }
	})
}

// normalizedLeakage is NL of ASHRAE 62.2-2013 and 2016.
func (f *Facts) normalizedLeakage() result[float64] {
	line := Line{Name: "normalized leakage", Formula: "1000 x (ELA / A) x (H / Hr)^0.4, Hr = 8.2 ft",
		Source: "ASHRAE 62.2-2013 and 2016, read in a secondary document"}
	return compute(f, line, func(w *working) func() (float64, error) {
		area := from(w, "ELA", f.leakageArea())
		d := f.Design.Dwelling
		floor := given(w, "A", d.FloorArea, d.Ref, "floor_area")
		height := given(w, "H", d.Height, d.Ref, "height")
		return func() (float64, error) { return envelope.NormalizedLeakage(area, floor, height, q.IP) }
	})
}

// normalizedInfiltration is the effective annual average infiltration by the form
// of ASHRAE 62.2-2013 and 2016, through normalized leakage.
func (f *Facts) normalizedInfiltration() result[q.Flow] {
	line := Line{Name: "effective annual average infiltration, 62.2-2013 and 2016", Formula: "NL x wsf x A / 7.3, A in ft2, in cfm",
		Source: "Uniform Mechanical Code, appendix E 605.1.3, which reprints ASHRAE 62.2"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		leakage := from(w, "NL", f.normalizedLeakage())
		d := f.Design.Dwelling
		floor := given(w, "A", d.FloorArea, d.Ref, "floor_area")
		weather := f.weather(w)
		return func() (q.Flow, error) { return envelope.NormalizedInfiltration(leakage, weather, floor, q.IP) }
	})
}

func (f *Facts) weather(w *working) float64 {
	l := f.Design.Dwelling.Leakage
	if l == nil {
		return 0 // the leakage is asked for already
	}
	return given(w, "wsf", l.WeatherFactor, l.Ref, "weather_factor")
}

// infiltration is the effective annual average infiltration by the direct form
// of ASHRAE 62.2-2019.
func (f *Facts) infiltration() result[q.Flow] {
	line := Line{Name: "effective annual average infiltration", Formula: "0.052 x Q50 x wsf x (H / Hr)^0.4, Hr = 8.2 ft",
		Source: "ASHRAE 62.2-2019 equation 4-3, read in a secondary document"}
	return compute(f, line, func(w *working) func() (q.Flow, error) {
		law := fromWhole(w, f.leakage())
		from(w, "Q50", f.flow50())
		d := f.Design.Dwelling
		height := given(w, "H", d.Height, d.Ref, "height")
		weather := f.weather(w)
		return func() (q.Flow, error) { return law.Infiltration(weather, height, q.IP) }
	})
}
