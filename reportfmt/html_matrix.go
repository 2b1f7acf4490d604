package reportfmt

import (
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// htmlRuled is one rule with its outcomes.
type htmlRuled struct {
	Rule, Title, Basis string
	Rows               []htmlRow
}

// htmlRow is one outcome of a rule with the reason for it, and all the subjects that
// have it; a problem has a row of its own.
type htmlRow struct {
	Subjects       []string
	Outcome, Class string
	Detail         string
	Finding        htmlFound // number 0: none
}

// matrix lists every rule with all of its subjects, in the order in which the report
// comes to the rules.
func (e *entries) matrix() []htmlRuled {
	var all []htmlRuled
	at := map[string]int{}
	for i := range e.report.Results {
		r := &e.report.Results[i]
		id := ruleID(r)
		n, known := at[id]
		if !known {
			n = len(all)
			at[id] = n
			all = append(all, htmlRuled{Rule: id, Title: oneLine(r.Rule.Title), Basis: strings.Join(cited(r.Rule.Basis), "; ")})
		}
		all[n].add(e.row(r))
	}
	return all
}

// add joins a row with one that says the same of another subject.
func (m *htmlRuled) add(row htmlRow) {
	for i := range m.Rows {
		if same := &m.Rows[i]; row.Finding.Number == 0 && same.Finding.Number == 0 && same.Outcome == row.Outcome && same.Detail == row.Detail {
			same.Subjects = append(same.Subjects, row.Subjects...)
			return
		}
	}
	m.Rows = append(m.Rows, row)
}

// row is what the matrix says of one result.
func (e *entries) row(r *checker.Result) htmlRow {
	row := htmlRow{Subjects: []string{subjects(r)}, Outcome: outcomeWords[r.Outcome], Class: "outcome-" + string(r.Outcome)}
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
	return row
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
