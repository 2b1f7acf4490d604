package quantity

import (
	"math"
	"testing"
	"unicode/utf8"
)

// FuzzParse holds that no text makes Parse panic, that it gives either a finite
// value or a message, and that what is read can be printed and read again.
func FuzzParse(f *testing.F) {
	for _, k := range kinds {
		f.Add(k.example)
	}
	for _, u := range inventory {
		f.Add("4.25 " + u.Symbol)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := Parse(text)
		if err != nil {
			if v != nil || err.Error() == "" || !utf8.ValidString(err.Error()) {
				t.Fatalf("%q: value %v with message %q", text, v, err)
			}
			return
		}
		x, ok := size(v)
		if !ok || math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%q gives %v", text, v)
		}
		if _, cold := v.(Temperature); math.Abs(x) < 1e6 && !(cold && x < 1) {
			readsBack(t, v, x) // farther out the numbers are printed, but too large to read
		}
	})
}

// readsBack prints what was read and reads it again. Rounding is a share of the
// value, save on the temperature scales, whose zeros lie elsewhere.
func readsBack(t *testing.T, v any, x float64) {
	slack := max(0.006*math.Abs(x), nearZero)
	if _, affine := v.(Temperature); affine {
		slack = 0.0501
	}
	for _, s := range []System{IP, SI} {
		printed := Format(v, s)
		again, err := Parse(printed)
		if err != nil {
			t.Fatalf("%q: %v", printed, err)
		}
		if y, _ := size(again); math.Abs(x-y) > slack {
			t.Fatalf("%q reads back as %g, was %g", printed, y, x)
		}
	}
}
