package envelope

import (
	"math"
	"testing"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func finite(t *testing.T, numbers ...float64) {
	t.Helper()
	for _, x := range numbers {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%v", numbers)
		}
	}
}

// FuzzHouse holds that any numbers give an error or finite pressures, flows and
// areas of the right sign that agree with each other.
func FuzzHouse(f *testing.F) {
	f.Add(0.5, 0.65, 0.1, 0.05, 0.02)
	f.Add(1e-4, 0.5, 100.0, 0.0, 0.0)
	f.Add(100.0, 1.0, 0.0, 1e-300, 0.0)
	f.Add(math.NaN(), math.Inf(1), math.Inf(-1), math.Copysign(0, -1), 1.0)
	f.Fuzz(func(t *testing.T, flow50, n, exhaust, supply, makeup float64) {
		l, err := FromFlow50(q.Flow(flow50), n)
		if err != nil {
			return
		}
		finite(t, l.Coefficient(), float64(l.EffectiveArea()), float64(l.EquivalentArea()))
		houses, err := l.Pressures(Operation{Exhaust: []q.Flow{q.Flow(exhaust)}, Supply: []q.Flow{q.Flow(supply)}, Makeup: []q.Flow{q.Flow(makeup)}})
		if err != nil {
			return
		}
		h := houses[0]
		finite(t, float64(h.Pressure), float64(h.Imbalance))
		if h.Pressure != 0 && math.Signbit(float64(h.Pressure)) != math.Signbit(float64(h.Imbalance)) {
			t.Fatalf("%v of %v", h.Pressure, h.Imbalance)
		}
		if back, err := l.Flow(h.Pressure); err == nil && math.Abs(float64(back-h.Imbalance)) > 1e-9*math.Abs(float64(h.Imbalance))+1e-12 {
			t.Fatalf("%v comes back as %v", h.Imbalance, back)
		}
	})
}

// FuzzInfiltration holds that any numbers give an error or finite, non-negative
// flows.
func FuzzInfiltration(f *testing.F) {
	f.Add(0.5, 0.6, 5.0, 150.0, 0.05, 0.7)
	f.Add(-1.0, math.NaN(), 0.0, 1e300, math.Inf(1), 2.0)
	f.Fuzz(func(t *testing.T, flow50, weather, height, floor, required, exterior float64) {
		ok := func(x q.Flow, err error) {
			t.Helper()
			finite(t, float64(x))
			if x < 0 || err != nil && (x != 0 || err.Error() == "") {
				t.Fatalf("%v with error %v", x, err)
			}
		}
		for _, s := range []q.System{q.IP, q.SI} {
			l, err := FromFlow50(q.Flow(flow50), DefaultExponent)
			if err != nil {
				return
			}
			i, err := l.Infiltration(weather, q.Length(height), s)
			ok(i, err)
			c := Credit{q.Flow(required), i, q.Ratio(exterior), true, true}
			ok(c.Counted())
			ok(c.Fan2013())
			ok(c.Fan2019())
			if nl, err := NormalizedLeakage(l.EffectiveArea(), q.Area(floor), q.Length(height), s); err == nil {
				ok(NormalizedInfiltration(nl, weather, q.Area(floor), s))
			}
			for _, rule := range everyRule {
				ok(rule.Combine(q.Flow(required), i, q.Flow(height)))
			}
		}
	})
}
