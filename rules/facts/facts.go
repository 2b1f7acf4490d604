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
	Design   *design.Design
	Site     *site.Site
	Work     int               // that judging the design has taken so far, as the judge counts it
	Told     Told              // what reasons have taken beside
	Problems int               // among the judgements so far
	Packs    int               // that judge the design, each with facts of its own, and share what may be spent
	Scope    *expression.Scope // of all expressions about the design; whoever evaluates sets its steps

	listing bool // lines list their inputs, for a worksheet; rules ask for values alone

	kinds    map[design.OpeningKind][]*design.Opening
	labels   map[any]string                      // of things that lines are about
	reads    map[design.Placed][]expression.Read // keys of places
	computed map[lineKey]any                     // results of lines
	joined   *joints                             // nil until they are asked for
	strings  map[[2]design.Placed]site.Measurement
	led      int // walls that strings were led around, counted for each
}

// Told is what has been told of a design: steps of evaluations for the reasons of
// problems and of the rest, and judgements of the rest.
type Told struct{ Problems, Rest, Listed int }

// Of prepares the facts of a design.
func Of(d *design.Design) *Facts {
	f := &Facts{
		Design: d, Site: site.New(d), Packs: 1,
		kinds:    map[design.OpeningKind][]*design.Opening{},
		labels:   map[any]string{},
		reads:    map[design.Placed][]expression.Read{},
		computed: map[lineKey]any{},
		strings:  map[[2]design.Placed]site.Measurement{},
	}
	f.Scope = expression.NewScope(f, 0)
	return f
}

// label is what people call a thing of the design.
func (f *Facts) label(thing any) string {
	label, known := f.labels[thing]
	if !known {
		label = design.Label(thing)
		f.labels[thing] = label
	}
	return label
}

// openings are those of a kind.
func (f *Facts) openings(kind design.OpeningKind) []*design.Opening {
	list, known := f.kinds[kind]
	if !known {
		for _, o := range f.Design.Openings {
			if o.Kind == kind {
				list = append(list, o)
			}
		}
		f.kinds[kind] = list
	}
	return list
}
