package reportfmt

import (
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// detail tells a result in full, one labelled part to a line, for formats that
// have one text for it.
func detail(file string, r *checker.Result) string {
	var lines []string
	add := func(label string, values ...string) {
		for _, v := range values {
			if v = oneLine(v); v != "" {
				lines = append(lines, label+": "+v)
			}
		}
	}
	add("where", subjects(r)+", "+placeText(file, r.Position))
	add("rule", ruleID(r))
	add("finding", message(r))
	if r.Outcome == rules.Open {
		add("missing", missingKeys(r)...)
	} else {
		for _, c := range telling(r) {
			add("compared", demand(c))
		}
	}
	add("reason", reasonsOf(r)...)
	add("as drawn", r.Stated...)
	add("basis", basisTexts(r.Rule.Basis)...)
	add("limit", localLimits(r)...)
	if r.Variance != nil {
		add("accepted", variance(r))
	} else {
		add("remedy", r.Remedy)
	}
	if asks(r) {
		add("caution", r.Rule.Caution)
	}
	return strings.Join(lines, "\n")
}

// variance tells who accepted a result, why, and until when.
func variance(r *checker.Result) string {
	v := r.Variance
	return oneLine(v.Reason + "; accepted by " + v.By + ", " + until(r))
}

func until(r *checker.Result) string {
	if r.Variance.Until == nil || *r.Variance.Until == "" {
		return "no end stated"
	}
	return "until " + *r.Variance.Until
}

// headline says in a few words what a result asks; empty for one that asks
// nothing.
func headline(r *checker.Result) string {
	switch {
	case r.Variance != nil:
		return "accepted: " + finding(r)
	case !asks(r):
		return ""
	case r.Outcome == rules.Fail && r.Level != rules.Error:
		return weight(r.Level) + ": " + problemText(r)
	}
	return problemText(r)
}
