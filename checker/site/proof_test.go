package site

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A distance between convex pieces is proven when its two points lie in the
// pieces, and when two planes square to the way between them, one through each
// point, have the pieces on their outer sides. No search can then do better.

// reach is how far a piece goes along a direction.
func reach(p piece, direction vec) float64 {
	switch p := p.(type) {
	case segment:
		return max(p.a.dot(direction), p.b.dot(direction))
	case disc:
		return p.centre.dot(direction) + p.radius*p.normal.cross(direction).length()
	}
	far := math.Inf(-1)
	for _, c := range p.(region).corners {
		far = max(far, c.dot(direction))
	}
	return far
}

// outside is how far a point lies from a convex piece at most; 0 inside.
func outside(p piece, at vec) float64 {
	switch p := p.(type) {
	case segment:
		return math.Abs(at.minus(p.a).length() + at.minus(p.b).length() - p.b.minus(p.a).length())
	case disc:
		out := at.minus(p.centre)
		return max(math.Abs(out.dot(p.normal)), out.length()-p.radius, 0)
	}
	r := p.(region)
	far := math.Abs(at.minus(r.corners[0]).dot(r.normal))
	for i := range r.corners {
		e := r.edge(i)
		way := e.b.minus(e.a)
		inward := r.normal.cross(way).times(1 / way.length())
		far = max(far, -at.minus(e.a).dot(inward))
	}
	return far
}

func prove(t *testing.T, a, b piece, got approach) {
	t.Helper()
	const fine = 1e-12
	require.False(t, math.IsNaN(got.gap))
	require.GreaterOrEqual(t, got.gap, 0.0)
	assert.InDelta(t, got.gap, got.to.minus(got.from).length(), fine, "%v %v", a, b)
	assert.LessOrEqual(t, outside(a, got.from), fine, "from lies in %v", a)
	assert.LessOrEqual(t, outside(b, got.to), fine, "to lies in %v", b)
	if got.gap < fine {
		return
	}
	way := got.to.minus(got.from).times(1 / got.gap)
	between := -reach(b, way.times(-1)) - reach(a, way)
	size := 1 + got.from.length() + got.to.length()
	rounding := 1e-14 * size * size / got.gap // of the direction
	assert.InDelta(t, got.gap, between, 1e-12+rounding, "nothing is nearer\n%#v\n%#v", a, b)
}

type dice struct{ *rand.Rand }

func newDice(seed uint64) dice { return dice{rand.New(rand.NewPCG(seed, 7))} }

func (d dice) within(low, high float64) float64 { return low + (high-low)*d.Float64() }

func (d dice) point(span float64) vec {
	return vec{d.within(-span, span), d.within(-span, span), d.within(-span, span)}
}

// direction is now and then one of the axes, or almost one.
func (d dice) direction() vec {
	axis := vec{}
	axis[d.IntN(3)] = 1
	switch d.IntN(4) {
	case 0:
		return axis
	case 1:
		v := axis.plus(d.point(math.Pow(10, d.within(-16, -2))))
		return v.times(1 / v.length())
	}
	v := d.point(1)
	return v.times(1 / v.length())
}

func (d dice) sides() (across, along, normal vec) {
	normal = d.direction()
	across = normal.cross(d.direction())
	for across.length() < 1e-3 {
		across = normal.cross(d.point(1))
	}
	across = across.times(1 / across.length())
	return across, normal.cross(across), normal
}

func (d dice) piece(span float64) piece {
	centre := d.point(span)
	across, along, normal := d.sides()
	switch d.IntN(4) {
	case 0:
		return point(centre)
	case 1:
		return segment{centre, d.point(span)}
	case 2:
		return disc{centre, normal, d.within(0.01, 2)}
	}
	return rectangle(centre, across.times(d.within(0.01, 2)), along.times(d.within(0.01, 2)), normal)
}

func TestNearestIsProven(t *testing.T) {
	d := newDice(1)
	for range 8000 {
		span := math.Pow(10, d.within(-0.5, 1.5))
		a, b := d.piece(span), d.piece(span)
		prove(t, a, b, a.to(b))
		if t.Failed() {
			return
		}
	}
}

// Pieces that just touch, or almost do, are the hard case for a method that
// minimises a square.
func TestNearestIsProvenForTouchingPieces(t *testing.T) {
	d := newDice(2)
	for range 4000 {
		a, b := d.piece(3), d.piece(3)
		first := a.to(b)
		if first.gap < 1e-6 {
			continue
		}
		left := math.Pow(10, d.within(-12, -1))
		shift := first.from.minus(first.to).times(1 - left)
		moved := shifted(b, shift)
		prove(t, a, moved, a.to(moved))
		assert.InDelta(t, first.gap*left, a.to(moved).gap, 1e-12, "%#v\n%#v", a, moved)
		if t.Failed() {
			return
		}
	}
}

func shifted(p piece, by vec) piece {
	switch p := p.(type) {
	case segment:
		return segment{p.a.plus(by), p.b.plus(by)}
	case disc:
		return disc{p.centre.plus(by), p.normal, p.radius}
	}
	r := p.(region)
	corners := make([]vec, len(r.corners))
	for i := range corners {
		corners[i] = r.corners[i].plus(by)
	}
	return region{corners, r.normal}
}

// star is an area, hollow or not, that can be seen whole from its centre.
func (d dice) star(centre vec) (whole region, parts []region) {
	corners := make([]vec, 3+d.IntN(9))
	for i := range corners {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(corners)))
		corners[i] = centre.plusTimes(d.within(0.2, 6), vec{cos, sin, 0})
	}
	whole = region{corners, up}
	for i := range corners {
		e := whole.edge(i)
		parts = append(parts, region{[]vec{centre, e.a, e.b}, up})
	}
	return whole, parts
}

// The triangles of a star are convex: their distances are proven, and the least
// of them is the distance of the star.
func TestNearestToAnAreaIsProven(t *testing.T) {
	d := newDice(3)
	for range 800 {
		star, parts := d.star(d.point(4))
		other := d.piece(6)
		best := nowhere
		for _, part := range parts {
			found := part.to(other)
			prove(t, part, other, found)
			best = nearer(best, found)
		}
		require.InDelta(t, best.gap, star.to(other).gap, 1e-12, "%#v\n%#v", star, other)
	}
}

func TestNearestOfTwoAreas(t *testing.T) {
	d := newDice(4)
	for range 120 {
		star, parts := d.star(d.point(5))
		other, otherParts := d.star(d.point(5))
		best := nowhere
		for _, part := range parts {
			for _, otherPart := range otherParts {
				best = nearer(best, part.to(otherPart))
			}
		}
		require.InDelta(t, best.gap, star.to(other).gap, 1e-12)
	}
}
