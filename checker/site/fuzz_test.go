package site

import (
	"math"
	"testing"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
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

func (n *numbers) house() []*design.Wall {
	corners := make([][2]float64, 3+n.next()%6)
	for i := range corners {
		corners[i] = [2]float64{n.length(), n.length()}
	}
	return footprint(corners, 1+math.Abs(float64(int8(n.next()))), 3)
}

// FuzzTaut looks for houses and things between which no string can be found, or
// one that cannot be.
func FuzzTaut(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte{1, 0, 0, 0, 0, 40, 0, 0, 0, 40, 0, 40, 0, 0, 0, 40, 0, 3, 0, 1, 20, 0, 8, 0, 1, 0, 2, 20, 0, 10, 0, 1, 0})
	f.Add([]byte{5, 0, 0, 0, 0, 40, 0, 0, 0, 40, 0, 40, 0, 20, 0, 40, 0, 20, 0, 10, 0, 8, 0, 10, 0, 8, 0, 40, 0, 0, 0, 40, 0, 9, 1, 0, 3, 20, 0, 8, 0, 3, 0, 6, 20, 0, 10, 0, 2, 0})
	f.Add([]byte{1, 0, 0, 0, 0, 40, 0, 0, 0, 40, 0, 40, 0, 0, 0, 40, 0, 3, 1, 1, 12, 0, 12, 0, 12, 0, 0, 4, 0, 2, 4, 3, 250, 0, 250, 0, 60, 0, 250, 0, 60, 0, 60, 0, 0, 0, 2})
	f.Fuzz(func(t *testing.T, bytes []byte) {
		n := &numbers{bytes}
		walls := n.house()
		for _, w := range walls {
			if !(math.Hypot(float64(w.To.X-w.From.X), float64(w.To.Y-w.From.Y)) > joint) {
				t.Skip() // no design has such a wall
			}
		}
		thing := func(id string) *design.Source {
			p := n.placement()
			if p.Wall != nil { // one of the house, and all of it on that wall, as a design must have it
				w := walls[int(n.next())%len(walls)]
				length := math.Hypot(float64(w.To.X-w.From.X), float64(w.To.Y-w.From.Y))
				p.Wall = &design.Link[design.Wall]{ID: w.ID, To: w}
				p.FromLeft = metres(length * float64(n.next()) / 255)
				aside := q.Length(2 * math.Min(float64(*p.FromLeft), length-float64(*p.FromLeft)))
				over := 2 * (*w.Height - *p.AboveGrade)
				for _, side := range []*q.Length{p.Diameter, p.Width} {
					if side != nil && *side > aside {
						t.Skip()
					}
				}
				for _, side := range []*q.Length{p.Diameter, p.Height} {
					if over < 0 || side != nil && *side > over {
						t.Skip()
					}
				}
			}
			return source(id, p)
		}
		a, b := thing("a"), thing("b")
		s := New(&design.Design{Walls: walls})
		there, err := s.TautMeasure(a, b)
		back, backErr := s.TautMeasure(b, a)
		if (err == nil) != (backErr == nil) {
			t.Fatalf("one way %v, the other %v", err, backErr)
		}
		if err != nil {
			return
		}
		straight, err := s.Measure(a, b)
		if err != nil {
			t.Fatal(err)
		}
		reach := vec(there.From).length() + vec(there.To).length()
		for _, w := range walls {
			if far := math.Hypot(float64(w.From.X), float64(w.From.Y)); far <= 2*farthest {
				reach += far // farther than that, it was not looked at
			}
		}
		scale := 1e-5 + 1e-9*reach
		length := float64(there.Length)
		drawn := 0.0
		for i := 1; i < len(there.Path); i++ {
			drawn += vec(there.Path[i]).minus(vec(there.Path[i-1])).length()
		}
		switch {
		case !(length >= float64(straight.Length)-scale && length <= 1000*farthest):
			t.Fatalf("found %g m, %g m straight", length, straight.Length)
		case !(math.Abs(length-float64(back.Length)) <= scale):
			t.Fatalf("one way %g m, the other %g m", length, back.Length)
		case there.Placed && !(math.Abs(drawn-length) <= scale):
			t.Fatalf("%g m, drawn as %g m", length, drawn)
		}
	})
}
