package moistair

import "testing"

func BenchmarkSaturationPressure(b *testing.B) {
	for b.Loop() {
		if _, err := SaturationPressure(293.15); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkDewPoint(b *testing.B) {
	s := air(b, 21, 0.4)
	for b.Loop() {
		s.DewPoint()
	}
}

func BenchmarkWetBulb(b *testing.B) {
	s := air(b, 21, 0.4)
	for b.Loop() {
		s.WetBulb()
	}
}

func BenchmarkRun(b *testing.B) {
	o := even(air(b, -20, 0.8), air(b, 21, 0.4))
	for b.Loop() {
		run(b, Core{Sensible: 0.75}, o)
	}
}

func BenchmarkFrostOnset(b *testing.B) {
	indoor := air(b, 21, 0.4)
	for b.Loop() {
		onset(b, Core{Sensible: 0.75}, indoor, 0.06, 0.06)
	}
}
