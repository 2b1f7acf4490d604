package impact

import (
	"cmp"
	"math"
	"reflect"
	"strings"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/expression"
)

// Near is a comparison that holds narrowly: the next figure that is a little
// less, or a limit that is a little stricter, would turn the pass.
type Near struct {
	Design   string  `json:"design"`
	Subjects string  `json:"subjects"` // what the rule was asked of
	Found    string  `json:"found"`
	Operator string  `json:"operator"`
	Required string  `json:"required"`
	Share    float64 `json:"share"` // of the required value, between found and required
}

// nearest is the narrowest comparison of a pass, where it lies within the margin and
// is narrower than the one before. Only quantities are measured: counts and grades go
// in steps, and a share of a temperature has no meaning.
func (c *Comparison) nearest(d *design.Design, name string, j rules.Judgement, best *Near) *Near {
	if j.Outcome != rules.Pass {
		return best
	}
	for _, p := range j.Require.Parts {
		share, ok := narrowness(p)
		if !ok || share >= c.margin || best != nil && share >= best.Share {
			continue
		}
		found, required := quantity.FormatPair(p.Found, p.Required, unitsOf(d))
		best = &Near{Design: name, Subjects: labels(j.Subjects), Found: found, Operator: p.Operator, Required: required, Share: share}
	}
	return best
}

func unitsOf(d *design.Design) quantity.System {
	if d.Project.Units == "SI" {
		return quantity.SI
	}
	return quantity.IP
}

// narrowness is how far apart the sides of a comparison lie, as a share of the
// required one.
func narrowness(p expression.Comparison) (share float64, ok bool) {
	if p.Truth != expression.True || !strings.ContainsAny(p.Operator, "<>") || p.Found == nil || p.Required == nil {
		return 0, false
	}
	found, required := reflect.ValueOf(p.Found), reflect.ValueOf(p.Required)
	if !measured(found) || !measured(required) {
		return 0, false
	}
	a, b := found.Float(), required.Float()
	if b == 0 || math.IsInf(a, 0) || math.IsInf(b, 0) {
		return 0, false
	}
	share = math.Abs(a-b) / math.Abs(b)
	if quantity.Compare(a, b) == 0 {
		share = 0
	}
	return round(share), true
}

func measured(v reflect.Value) bool {
	return v.CanFloat() && v.Type() != reflect.TypeFor[float64]() && v.Type() != reflect.TypeFor[quantity.Temperature]()
}

// round keeps four digits after the point: more would be noise in a report.
func round(share float64) float64 { return math.Round(share*1e4) / 1e4 }

func labels(subjects []any) string {
	if len(subjects) == 0 {
		return "the dwelling"
	}
	var list []string
	for _, s := range subjects {
		list = append(list, design.Label(s))
	}
	return strings.Join(list, ", ")
}

// nearer gives the narrower of two, the same whatever their order.
func nearer(a, b *Near) *Near {
	switch {
	case a == nil:
		return b
	case b == nil:
		return a
	}
	if cmp.Or(cmp.Compare(a.Share, b.Share), cmp.Compare(a.Design, b.Design), cmp.Compare(a.Subjects, b.Subjects), cmp.Compare(a.Found, b.Found)) <= 0 {
		return a
	}
	return b
}
