package site

import (
	"math"
	"testing"

	"github.com/ventlint/ventlint/checker/design"
)

// numbers deals out the bytes of a fuzz input as lengths, from ordinary ones to
// those that no site can hold.
type numbers struct{ bytes []byte }

func (n *numbers) next() byte {
	if len(n.bytes) == 0 {
		return 0
	}
	b := n.bytes[0]
	n.bytes = n.bytes[1:]
	return b
}

func (n *numbers) length() float64 {
	whole := float64(int8(n.next()))
	switch scale := n.next(); {
	case scale < 100:
		return whole / 4
	case scale < 200:
		return whole * math.Pow(2, float64(scale)-150)
	case scale == 200:
		return math.Inf(int(whole))
	case scale == 201:
		return math.NaN()
	default:
		return whole + float64(scale)/256
	}
}

func (n *numbers) points() []design.Point {
	list := make([]design.Point, 1+n.next()%8)
	for i := range list {
		list[i] = *at(n.length(), n.length())
	}
	return list
}

func (n *numbers) placement() design.Placement {
	var p design.Placement
	switch n.next() % 5 {
	case 0:
		w := wall("w", at(n.length(), n.length()), at(n.length(), n.length()), n.length())
		p = on(w, n.length(), n.length())
	case 1:
		p = roof(n.length(), n.length(), n.length())
	case 2:
		p = ground(n.length(), n.length(), n.length())
	case 3:
		p = design.Placement{Along: n.points(), Level: metres(n.length())}
	case 4:
		p = design.Placement{Outline: n.points(), Level: metres(n.length())}
	}
	switch n.next() % 3 {
	case 0:
		return round(p, n.length())
	case 1:
		return sides(p, n.length(), n.length())
	}
	return p
}

// FuzzDistance looks for things that cannot be measured, or are measured wrong in
// a way that shows by itself.
func FuzzDistance(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte{0, 0, 0, 0, 0, 40, 0, 0, 0, 0, 0, 20, 0, 8, 0, 0, 1, 0, 1, 20, 0, 20, 0, 24, 0, 0, 1, 0})
	f.Add([]byte{4, 4, 0, 0, 40, 0, 40, 40, 0, 40, 0, 0, 0, 0, 2, 2, 9, 0, 9, 0, 9, 0, 1, 4, 0, 4, 0})
	f.Add([]byte{3, 1, 200, 200, 201, 201, 3, 3, 150, 1, 160, 7, 199, 3, 100})
	f.Fuzz(func(t *testing.T, bytes []byte) {
		n := &numbers{bytes}
		a, b := source("a", n.placement()), source("b", n.placement())
		s := New(&design.Design{Sources: []*design.Source{a, b}})
		there, err := s.Measure(a, b)
		back, backErr := s.Measure(b, a)
		if (err == nil) != (backErr == nil) {
			t.Fatalf("one way %v, the other %v", err, backErr)
		}
		if err != nil {
			return
		}
		plan, err := s.Horizontal(a, b)
		if err != nil {
			t.Fatal(err)
		}
		scale := 1e-9 * (1 + vec(there.From).length() + vec(there.To).length())
		length := float64(there.Length)
		switch {
		case !(length >= 0 && length <= 10*farthest):
			t.Fatalf("found %g m", length)
		case !(math.Abs(length-float64(back.Length)) <= scale):
			t.Fatalf("one way %g m, the other %g m", length, back.Length)
		case !(float64(plan) <= length+scale):
			t.Fatalf("%g m on the plan, %g m straight", plan, length)
		case !(math.Abs(vec(there.To).minus(there.From).length()-length) <= scale):
			t.Fatalf("%g m, drawn as %g m", length, vec(there.To).minus(there.From).length())
		}
	})
}
