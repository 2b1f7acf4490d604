package airflow

import "testing"

func BenchmarkFrictionFactor(b *testing.B) {
	for b.Loop() {
		friction(25_000, 0.0006)
	}
}

func BenchmarkSectionLoss(b *testing.B) {
	s := Section{Shape: round(b, 0.15), Material: named(b, "galvanized-steel"), Length: 6, Fittings: coefficients(0.22, 0.22)}
	for b.Loop() {
		lossOf(b, StandardAir(), s, 0.05)
	}
}

func BenchmarkSectionFlow(b *testing.B) {
	s := Section{Shape: round(b, 0.15), Material: named(b, "galvanized-steel"), Length: 6, Fittings: coefficients(0.22, 0.22)}
	for b.Loop() {
		if _, err := s.Flow(StandardAir(), 10); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFittingNamed(b *testing.B) {
	for b.Loop() {
		fittingNamed(b, "smooth elbow 90, r/D 1.5")
	}
}

func BenchmarkNewSystem(b *testing.B) {
	runs, ends := house(b)
	for b.Loop() {
		newSystem(b, runs, ends)
	}
}

func BenchmarkDesign(b *testing.B) {
	s := newSystem(b, first(house(b)), second(house(b)))
	for b.Loop() {
		if _, err := s.Design(houseFlows); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkOpen(b *testing.B) {
	s := newSystem(b, first(house(b)), second(house(b)))
	for b.Loop() {
		if _, err := s.Open(0.05); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMeetOpen(b *testing.B) {
	s := newSystem(b, first(house(b)), second(house(b)))
	fan := curveOf(b, 0, 200, 0.03, 120, 0.06, 60, 0.08, 0)
	for b.Loop() {
		if _, err := s.MeetOpen(fan); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMeetDamped(b *testing.B) {
	s := newSystem(b, first(house(b)), second(house(b)))
	fan := curveOf(b, 0, 200, 0.03, 120, 0.06, 60, 0.08, 0)
	for b.Loop() {
		if _, err := s.MeetDamped(fan, houseFlows); err != nil {
			b.Fatal(err)
		}
	}
}
