package site

import (
	"fmt"
	"math"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// farthest is the largest length that a site can hold, in metres: a quarter of
// the way around the Earth. Beyond it, lengths lose the digits that limits need.
const farthest = 1e7

// reading takes inputs from a design and remembers those it did not find.
type reading struct {
	missing document.MissingAll
	err     error
}

// length reads a length; 0 when it is not given.
func (r *reading) length(of any, key string, value *q.Length) float64 {
	if value == nil {
		r.miss(of, key)
		return 0
	}
	return r.bounded(of, key, float64(*value))
}

// point reads a point of the plan at a level.
func (r *reading) point(of any, key string, value *design.Point, level float64) vec {
	if value == nil {
		r.miss(of, key)
		return vec{}
	}
	return vec{r.bounded(of, key, float64(value.X)), r.bounded(of, key, float64(value.Y)), level}
}

func (r *reading) points(of any, key string, values []design.Point, level float64) []vec {
	list := make([]vec, len(values))
	for i := range values {
		list[i] = r.point(of, key, &values[i], level)
	}
	return list
}

func (r *reading) miss(of any, key string) {
	m := document.Missing{Ref: design.Refer(of), Key: key, Thing: design.Label(of)}
	if !slices.Contains(r.missing, m) {
		r.missing = append(r.missing, m)
	}
}

func (r *reading) bounded(of any, key string, value float64) float64 {
	if math.Abs(value) <= farthest {
		return value
	}
	r.fail("%s of %s is %g m, expected at most %g m", key, design.Label(of), value, farthest)
	return 0
}

func (r *reading) fail(format string, args ...any) {
	if r.err == nil {
		r.err = fmt.Errorf(format, args...)
	}
}

// size is what is known of the outline of a thing.
type size struct {
	across, along float64 // whole sides, or the diameter in both
	round, none   bool
}

// size reads the sides that an aspect needs: the plan shows the width alone of
// what stands on a wall, and the height shows the height alone.
func (r *reading) size(p *place, width, height bool) size {
	w := p.where
	switch {
	case w.Diameter != nil:
		d := r.side(p, "diameter", w.Diameter)
		return size{across: d, along: d, round: true}
	case !p.hasSize() && p.isPoint():
		return size{none: true}
	case !p.hasSize():
		r.miss(p.thing, "diameter") // or both sides
		return size{}
	}
	var s size
	if width {
		s.across = r.side(p, "width", w.Width)
	}
	if height {
		s.along = r.side(p, "height", w.Height)
	}
	return s
}

func (r *reading) side(p *place, key string, value *q.Length) float64 {
	x := r.length(p.thing, key, value)
	if x < 0 {
		r.fail("%s of %s is %g m, expected no negative length", key, design.Label(p.thing), x)
	}
	return x
}

// view ends the reading.
func (r *reading) view(s shape) *view {
	return &view{shape: s, missing: r.missing, err: r.err}
}
