package expression

import (
	"fmt"
	"testing"
)

var typical = []string{
	"inlet.kind == 'inlet' and outlet.kind == 'outlet'",
	"gap(inlet, outlet) >= limit.gap or inlet.height >= 3 ft",
	"inlet.flow >= 7.5 cfm * (home.bedrooms + 1) + 0.01 cfm/ft2 * home.area",
	"not known(inlet.size) or inlet.size.width <= 1/2 in",
	"all(vents, .kind != 'relief' or .flow > 0 cfm)",
}

func BenchmarkCompile100(b *testing.B) {
	l, n := newLanguage(b), ruleNames()
	b.ReportAllocs()
	for b.Loop() {
		for i := range 100 {
			if _, err := l.Condition(typical[i%len(typical)], n); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkTruth(b *testing.B) {
	for _, text := range append(typical, "outlet.flow > 20 cfm", "gap(inlet, outlet) >= 10 ft") {
		b.Run(text, func(b *testing.B) {
			c, s := condition(b, text), newScope(b)
			b.ReportAllocs()
			for b.Loop() {
				s.fuel = 1_000_000
				if _, err := c.Truth(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkExplain(b *testing.B) {
	for _, text := range append(typical, "outlet.flow > 20 cfm") {
		b.Run(text, func(b *testing.B) {
			c, s := condition(b, text), newScope(b)
			b.ReportAllocs()
			for b.Loop() {
				s.fuel = 1_000_000
				if _, err := c.Explain(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkLoopOver(b *testing.B) {
	for _, n := range []int{10, 100} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			c, s := condition(b, "all(vents, .x > 1 mm)"), crowd(b, n, 1)
			for b.Loop() {
				s.fuel = 1_000_000
				if _, err := c.Truth(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
