package reportfmt

import (
	"fmt"
	"slices"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/reportfmt/drawing"
	"github.com/ventlint/ventlint/rules"
)

// htmlGroup is one chapter of findings.
type htmlGroup struct {
	ID, Title, Lead string
	Entries         []htmlEntry
}

// htmlEntry is one finding. Number is 0 for what a variance accepts.
type htmlEntry struct {
	ID, Title, Mark string
	Number          int
	Fields          []htmlField
	Asked, Joined   string // the condition, and how its comparisons belong together
	Comparisons     []htmlComparison
	Remedy, Caution string
	Shown           []htmlLink
}

// htmlField is one labelled part of a finding, with a paragraph for each text.
type htmlField struct {
	Label string
	Texts []string
}

type htmlComparison struct{ Text, Of, Found, Required, Wanting string }

type htmlLink struct{ ID, Text string }

// entries makes the findings of one report.
type entries struct {
	report   *checker.Report
	changes  *changes
	anchor   string
	drawings []drawing.Drawing
	numbers  map[*checker.Result]int
}

var groupAnchors = []string{corrections: "corrections", openItems: "open", toBeJudged: "judge", advisories: "advisories", notes: "notes"}

func (e *entries) groups(groups []group) []htmlGroup {
	e.numbers = map[*checker.Result]int{}
	var all []htmlGroup
	for i, g := range groups {
		made := htmlGroup{ID: e.anchor + groupAnchors[i], Title: g.Title, Lead: g.Lead}
		for _, r := range g.Results {
			e.numbers[r] = len(e.numbers) + 1
			made.Entries = append(made.Entries, e.entry(r, e.numbers[r]))
		}
		if len(made.Entries) > 0 {
			all = append(all, made)
		}
	}
	return all
}

func (e *entries) entry(r *checker.Result, number int) htmlEntry {
	made := htmlEntry{Title: oneLine(r.Rule.Title), Mark: e.changes.mark(r), Number: number, Fields: e.fields(r),
		Remedy: oneLine(r.Remedy), Caution: oneLine(r.Rule.Caution), Shown: e.shown(number)}
	if number > 0 {
		made.ID = findingAnchor(e.anchor, number)
	}
	told := telling(r)
	if r.Outcome == rules.Open {
		return made
	}
	if len(told) > 1 {
		made.Asked, made.Joined = oneLine(r.Rule.Require), joins(r)
	}
	for _, c := range told {
		made.Comparisons = append(made.Comparisons, htmlComparison{oneLine(c.Text), oneLine(c.Of), oneLine(found(c)), oneLine(required(c)), difference(c)})
	}
	return made
}

func findingAnchor(anchor string, number int) string {
	return fmt.Sprintf("%sfinding-%d", anchor, number)
}

// fields lists the labelled values of a finding, in the order of a notice.
func (e *entries) fields(r *checker.Result) []htmlField {
	var all []htmlField
	add := func(label string, texts ...string) {
		var told []string
		for _, text := range texts {
			if text = oneLine(text); text != "" {
				told = append(told, text)
			}
		}
		if len(told) > 0 {
			all = append(all, htmlField{label, told})
		}
	}
	add("Finding", message(r))
	if r.Outcome == rules.Open {
		add("Missing", missingKeys(r)...)
	}
	add("Where", subjects(r), placeText(e.report.File, r.Position))
	add("Rule", ruleID(r))
	if r.Variance == nil && r.Outcome != rules.Fail {
		add("May become", weight(r.Level))
	}
	add("Reason", reasonsOf(r)...)
	add("As drawn", r.Stated...)
	if r.Variance != nil {
		add("Accepted", variance(r))
	}
	add("Basis", basisTexts(r.Rule.Basis)...)
	add("Limit", localLimits(r)...)
	return all
}

// shown links a finding to the drawings that show it.
func (e *entries) shown(number int) []htmlLink {
	var all []htmlLink
	for _, d := range e.drawings {
		if number > 0 && slices.Contains(d.Findings, number) {
			all = append(all, htmlLink{drawingAnchor(d), d.Title})
		}
	}
	return all
}
