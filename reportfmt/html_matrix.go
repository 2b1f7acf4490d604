package reportfmt

import (
	"strings"

	"github.com/ventlint/ventlint/rules"
)

// htmlRow is one rule for one subject.
type htmlRow struct {
	Rule, Title, Subject string
	Outcome, Class       string
	Detail, Basis        string
	Finding              htmlFound // number 0: none
}

// matrix lists every rule and subject of the report, in its order.
func (e *entries) matrix() []htmlRow {
	var all []htmlRow
	for i := range e.report.Results {
		r := &e.report.Results[i]
		row := htmlRow{Rule: ruleID(r), Title: oneLine(r.Rule.Title), Subject: subjects(r), Outcome: outcomeWords[r.Outcome],
			Class: "outcome-" + string(r.Outcome), Basis: strings.Join(cited(r.Rule.Basis), "; ")}
		switch {
		case r.Variance != nil:
			row.Outcome, row.Class = "accepted ("+row.Outcome+")", "outcome-accepted"
		case r.Outcome == rules.Fail:
			row.Outcome += ", " + weight(r.Level)
		}
		if n := e.numbers[r]; n > 0 {
			row.Finding = htmlFound{findingAnchor(e.anchor, n), n}
		} else {
			row.Detail = strings.Join(r.Reasons, "; ")
		}
		all = append(all, row)
	}
	return all
}

// cited gives the place of each basis and, unless its writer read it there,
// how far it may be relied on.
func cited(bases []rules.Basis) []string {
	var all []string
	for _, b := range bases {
		b.Remark = ""
		all = append(all, basisText(b))
	}
	return all
}
