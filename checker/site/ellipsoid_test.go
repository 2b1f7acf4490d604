package site

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestMinimiseFindsWhatIsKnown(t *testing.T) {
	d := newDice(40)
	for range 300 {
		slope := []float64{d.within(-1, 1), d.within(-1, 1), d.within(-1, 1)}
		linear := func(x, into []float64) float64 {
			sum := 0.0
			for i, s := range slope {
				into[i] = s
				sum += s * x[i]
			}
			return sum
		}
		_, least := minimise(domain{unitDisc, interval}, linear, math.Inf(1))
		assert.InDelta(t, -math.Hypot(slope[0], slope[1])-math.Abs(slope[2]), least, 1e-8, "linear over a disc and an interval")
	}
}

func TestMinimiseFollowsKinks(t *testing.T) {
	d := newDice(41)
	for range 300 {
		at := []float64{d.within(-1.5, 1.5), d.within(-1.5, 1.5)}
		kinks := func(x, into []float64) float64 {
			sum := 0.0
			for i, a := range at {
				into[i] = math.Copysign(1, x[i]-a)
				sum += math.Abs(x[i] - a)
			}
			return sum
		}
		best, least := minimise(domain{interval, interval}, kinks, math.Inf(1))
		for i, a := range at {
			assert.InDelta(t, clamp(a, -1, 1), best[i], 1e-8)
		}
		assert.InDelta(t, math.Abs(at[0]-clamp(at[0], -1, 1))+math.Abs(at[1]-clamp(at[1], -1, 1)), least, 1e-8)
	}
}

func TestMinimiseOfOneUnknownAndOfNone(t *testing.T) {
	bowl := func(x, into []float64) float64 {
		clear(into)
		into[0] = 2 * (x[0] - 0.25)
		return (x[0]-0.25)*(x[0]-0.25) + 3
	}
	best, least := minimise(domain{interval}, bowl, math.Inf(1))
	assert.InDelta(t, 3, least, 1e-9)
	assert.InDelta(t, 0.25, best[0], 1e-4)
	none := func(_, into []float64) float64 { clear(into); return 7 }
	_, least = minimise(nil, none, math.Inf(1))
	assert.Equal(t, 7.0, least)
}

// A search that cannot beat a known value ends early.
func TestMinimiseStopsWhereNothingLessIsLeft(t *testing.T) {
	steps := 0
	bowl := func(x, into []float64) float64 {
		steps++
		length := math.Sqrt(1 + (x[0]-0.3)*(x[0]-0.3) + x[1]*x[1])
		into[0], into[1] = (x[0]-0.3)/length, x[1]/length
		return length
	}
	minimise(domain{interval, interval}, bowl, math.Inf(1))
	whole := steps
	steps = 0
	minimise(domain{interval, interval}, bowl, 0.9)
	assert.Less(t, steps, whole)
	assert.LessOrEqual(t, steps, 4)
}

// The way out of a domain, by hand, from each of its blocks.
func TestTheWayOutOfADomain(t *testing.T) {
	d := domain{interval, unitDisc, interval}
	for _, c := range []struct {
		x, way []float64
		far    float64
	}{
		{[]float64{0.5, 0.6, 0.8, -1}, []float64{0, 0, 0, 0}, 0},
		{[]float64{-3, 0, 0, 0}, []float64{-1, 0, 0, 0}, 2},
		{[]float64{0, 3, -4, 0}, []float64{0, 0.6, -0.8, 0}, 4},
		{[]float64{0, 0.1, 0.1, 1.5}, []float64{0, 0, 0, 1}, 0.5},
	} {
		way := []float64{9, 9, 9, 9}
		assert.InDelta(t, c.far, d.cut(c.x, way), 1e-15, "%v", c.x)
		assert.InDeltaSlice(t, c.way, way, 1e-15, "%v", c.x)
	}
}

// The least ellipsoid around a part of a ball has a centre and axes in closed form.
// Source: Bland, Goldfarb and Todd 1981, The ellipsoid method, deep cuts; from memory.
func TestTheLeastEllipsoidAroundAPartOfABall(t *testing.T) {
	for _, n := range []int{2, 3, 5} {
		for _, depth := range []float64{0, 0.25, 0.8} {
			e, slope, size := newEllipsoid(n), make([]float64, n), math.Sqrt(float64(n))
			slope[0] = 2
			reach := e.reach(slope)
			assert.InDelta(t, 2*size, reach, 1e-14)
			e.cut(reach, depth)
			k := float64(n)
			across := math.Sqrt(k * k * (1 - depth*depth) / (k*k - 1))
			along := across * math.Sqrt(1-2*(1+k*depth)/((k+1)*(1+depth)))
			assert.InDelta(t, -size*(1+k*depth)/(k+1), e.centre[0], 1e-14)
			assert.InDelta(t, size*along, e.stretch[0][0], 1e-14, "%d at %v", n, depth)
			for i := 1; i < n; i++ {
				assert.InDelta(t, size*across, e.stretch[i][i], 1e-14, "%d at %v", n, depth)
				assert.Zero(t, e.centre[i])
			}
		}
	}
}

// The slope that a course writes is how its length changes.
func TestTheSlopeOfACourse(t *testing.T) {
	d := newDice(42)
	round := end{flat: segment{vec{1, 0, 0}, vec{1.6, 0.2, 0}}, low: 1, high: 1.6, round: true}
	upright := end{flat: segment{vec{4, 7, 0}, vec{3, 6, 0}}, low: 0.5, high: 2}
	over := []crossed{{segment{vec{0, 1, 0}, vec{5, 2, 0}}, 2.2}, {segment{vec{5, 4, 0}, vec{1, 5, 0}}, 2.7}}
	bent := leg{end: &upright, corners: []vec{{6, 6, 0}, {6, 5, 0}}, between: 1}
	for _, c := range []course{
		{from: leg{end: &round}, to: leg{end: &upright}, over: over},
		{from: bent, to: leg{end: &round}, over: over[:1]},
	} {
		n := c.unknowns().size()
		for range 50 {
			x, slope, ignored := make([]float64, n), make([]float64, n), make([]float64, n)
			for i := range x {
				x[i] = d.within(-0.7, 0.7)
			}
			length := c.length(x, slope)
			for i := range x {
				const step = 1e-6
				x[i] += step
				assert.InDelta(t, slope[i], (c.length(x, ignored)-length)/step, 1e-4, "unknown %d", i)
				x[i] -= step
			}
		}
	}
}
