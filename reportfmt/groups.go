package reportfmt

import (
	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// group is one chapter of a correction notice.
type group struct {
	Title   string
	Lead    string // what the chapter asks of its reader
	One     string // how one of its items is counted
	Many    string
	Results []*checker.Result
}

// Groups of problems, in the order of a notice.
const (
	corrections = iota
	openItems
	toBeJudged
	advisories
	notes
)

// groupsOf sorts the problems of a report into the chapters of a notice, each in
// the order of the report. Chapters without items are there too.
func groupsOf(r *checker.Report) []group {
	groups := []group{
		corrections: {Title: "Corrections", One: "correction", Many: "corrections",
			Lead: "The design does not meet these requirements."},
		openItems: {Title: "Open items", One: "open item", Many: "open items",
			Lead: "The design does not say enough to decide these. Give what is missing."},
		toBeJudged: {Title: "To be judged", One: "item to be judged", Many: "items to be judged",
			Lead: "Figures alone do not decide these; a person must."},
		advisories: {Title: "Advisories", One: "advisory", Many: "advisories",
			Lead: "Departures from what is advised; they weigh less than corrections."},
		notes: {Title: "Notes", One: "note", Many: "notes",
			Lead: "Worth knowing; of little weight."},
	}
	for i := range r.Results {
		if result := &r.Results[i]; result.Problem() {
			at := groupOf(result)
			groups[at].Results = append(groups[at].Results, result)
		}
	}
	return groups
}

func groupOf(r *checker.Result) int {
	switch {
	case r.Outcome == rules.Open:
		return openItems
	case r.Outcome == rules.Review:
		return toBeJudged
	}
	switch r.Level {
	case rules.Warning:
		return advisories
	case rules.Note:
		return notes
	}
	return corrections
}

// accepted lists the results that a variance accepts.
func accepted(r *checker.Report) []*checker.Result {
	var all []*checker.Result
	for i := range r.Results {
		if r.Results[i].Variance != nil {
			all = append(all, &r.Results[i])
		}
	}
	return all
}

// statedDistances lists the drawings' dimensions that any result used, once
// each, in the order of their first use.
func statedDistances(r *checker.Report) []string {
	var all []string
	seen := map[string]bool{}
	for i := range r.Results {
		for _, s := range r.Results[i].Stated {
			if !seen[s] {
				seen[s] = true
				all = append(all, s)
			}
		}
	}
	return all
}
