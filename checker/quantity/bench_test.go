package quantity

import "testing"

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"80 cfm", "12 ft 4 1/2 in", "-5 F", "R-8", "80 parsecs"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _ = Parse(text)
			}
		})
	}
}

func BenchmarkFormat(b *testing.B) {
	for _, v := range []any{Flow(0.04), Length(3.77), Temperature(252)} {
		b.Run(Format(v, IP), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_ = Format(v, IP)
			}
		})
	}
}

func BenchmarkFormatPair(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_, _ = FormatPair(Length(3.0479999), Length(3.048), IP)
	}
}
