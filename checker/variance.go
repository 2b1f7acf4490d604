package checker

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// Remark is something that the reader of a report must know although no rule
// says it, such as a variance that accepts nothing.
type Remark struct {
	Text     string
	Position document.Position
}

// accept gives each problem the variance that accepts it, and remarks on those
// variances that accept nothing.
func (r *Report) accept(variances []*design.Variance, packs []*rules.Effective) {
	for _, v := range variances {
		if why := ended(v, r.Date); why != "" {
			r.remark(v, "until", why)
			continue
		}
		if !r.acceptOne(v) {
			r.remark(v, "rule", unused(v, packs))
		}
	}
}

func (r *Report) remark(v *design.Variance, key, why string) {
	r.Remarks = append(r.Remarks, Remark{fmt.Sprintf("the variance from %q counts for nothing: %s", v.Rule, why), v.At(key)})
}

// ended says why a variance does not count on a day; its last day counts, and a
// day that cannot be read counts as past.
func ended(v *design.Variance, today string) string {
	if v.Until == nil {
		return ""
	}
	if _, err := time.Parse(time.DateOnly, *v.Until); err != nil {
		return fmt.Sprintf("%q is not a day such as 2026-03-31", *v.Until)
	}
	if *v.Until < today { // days of this form sort as text
		return "it ended on " + *v.Until
	}
	return ""
}

func (r *Report) acceptOne(v *design.Variance) (used bool) {
	for i := range r.Results {
		result := &r.Results[i]
		if result.Problem() && named(v.Rule, result.Pack, result.Rule) && result.concerns(v.Subject) {
			result.Variance = v
			used = true
		}
	}
	return used
}

// unused tells a variance from a rule that there is not from one whose rule
// asks nothing.
func unused(v *design.Variance, packs []*rules.Effective) string {
	var ids []string
	for _, pack := range packs {
		for _, rule := range pack.Rules {
			if named(v.Rule, rule.Pack, &rule.Rule) {
				return "the rule finds nothing that it would accept"
			}
			ids = append(ids, rule.ID)
		}
	}
	if near := document.Near(v.Rule, ids); near != "" {
		return fmt.Sprintf("no pack of this review holds such a rule; did you mean %q?", near)
	}
	return "no pack of this review holds such a rule"
}

// named tells whether a name means the rule of a pack: its id, an earlier id, or
// either with the pack before it.
func named(name, pack string, rule *rules.Rule) bool {
	if before, id, ok := strings.Cut(name, ":"); ok {
		if before != pack {
			return false
		}
		name = id
	}
	return name == rule.ID || slices.Contains(rule.Aliases, name)
}

// concerns tells whether one of the subjects has an id; no id means all.
func (r *Result) concerns(id *string) bool {
	if id == nil {
		return true
	}
	for _, s := range r.Subjects {
		if s.ID == *id {
			return true
		}
	}
	return false
}
