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
			w.line.Note = "no exponent is given: 0.65 is taken, the usual figure of houses"
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
		var weather float64
		if l := d.Leakage; l != nil {
			weather = given(w, "wsf", l.WeatherFactor, l.Ref, "weather_factor")
		}
		return func() (q.Flow, error) { return law.Infiltration(weather, height, q.IP) }
	})
}
