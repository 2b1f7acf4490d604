package envelope

import "testing"

func BenchmarkPressure(b *testing.B) {
	l := leakage(b, 0.5, 0.65)
	for b.Loop() {
		pressure(b, l, 0.1)
	}
}

func BenchmarkWorstCase(b *testing.B) {
	l := leakage(b, 0.5, 0.65)
	for b.Loop() {
		o, err := WorstCase(hood, dryer, bath, fresh, unit)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := l.Pressures(o); err != nil {
			b.Fatal(err)
		}
	}
}
