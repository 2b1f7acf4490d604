package site

import (
	"math"
	"slices"

	"github.com/ventlint/ventlint/checker/document"
)

// aspect is what of a thing is looked at. Each needs other inputs: on the plan
// no height counts, and in height no place along a wall.
type aspect int

const (
	inSpace aspect = iota
	onPlan
	inHeight // a vertical segment from the bottom edge to the top edge
	aspects  // how many there are
)

// view is a thing under one aspect. Its shape counts only when it has no
// problem.
type view struct {
	shape   shape
	missing document.MissingAll
	err     error // an input that no site can hold
}

// views are a thing under each aspect, nil until it is looked at.
type views [aspects]*view

func (v *views) of(a aspect, look func() *view) *view {
	if v[a] == nil {
		v[a] = look()
	}
	return v[a]
}

func (v *view) known() bool { return len(v.missing) == 0 && v.err == nil }

// problem is the error of a view: *document.Missing for one missing input,
// document.MissingAll for several.
func (v *view) problem() error {
	switch {
	case v.err != nil:
		return v.err
	case len(v.missing) == 1:
		return &v.missing[0]
	case len(v.missing) > 1:
		return v.missing
	}
	return nil
}

// problems is the error of two views together.
func problems(a, b *view) error {
	if a.known() && b.known() {
		return nil
	}
	return a.and(b).problem()
}

// and gives what two views lack together; it has no shape.
func (v *view) and(other *view) *view {
	both := &view{missing: slices.Clone(v.missing), err: v.err}
	if both.err == nil {
		both.err = other.err
	}
	for _, m := range other.missing {
		if !slices.Contains(both.missing, m) {
			both.missing = append(both.missing, m)
		}
	}
	return both
}

// levels gives the bottom and the top of a view in height.
func (v *view) levels() (bottom, top float64) {
	bottom, top = math.Inf(1), math.Inf(-1)
	for _, p := range v.shape {
		s := p.(segment)
		bottom = min(bottom, s.a[2], s.b[2])
		top = max(top, s.a[2], s.b[2])
	}
	return bottom, top
}
