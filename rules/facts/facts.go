// Package facts is what rules can ask of a design: its things, and the values
// computed from them. A value that cannot be known because the design leaves
// an input out is a *document.Missing error, never a default.
package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/site"
	"github.com/ventlint/ventlint/rules/expression"
)

// Facts is one design with its computed values, each worked out once. It is for
// one goroutine.
type Facts struct {
	Design *design.Design
	Site   *site.Site
	Work   int               // that judging the design has taken so far, as the judge counts it
	Told   int               // steps that reasons have taken which only full reports show
	Scope  *expression.Scope // of all expressions about the design; whoever evaluates sets its steps

	computed map[string]any // results of lines
	joined   *joints        // nil until they are asked for
	strings  map[[2]design.Placed]site.Measurement
	led      int // walls that strings were led around, counted for each
}

// Of prepares the facts of a design.
func Of(d *design.Design) *Facts {
	f := &Facts{Design: d, Site: site.New(d), computed: map[string]any{}, strings: map[[2]design.Placed]site.Measurement{}}
	f.Scope = expression.NewScope(f, 0)
	return f
}

func (f *Facts) openings(kind design.OpeningKind) []*design.Opening {
	var list []*design.Opening
	for _, o := range f.Design.Openings {
		if o.Kind == kind {
			list = append(list, o)
		}
	}
	return list
}
