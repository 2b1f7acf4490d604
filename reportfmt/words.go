package reportfmt

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// confirm goes with every finding.
const confirm = "Confirm against the locally adopted code."

// closing ends every report that is read as a letter.
const closing = "This review is an aid to design and plan review. Confirm the code adopted where the " +
	"house stands: locally adopted codes and licensed practice decide."

// nothingChecked warns of a report in which no rule was decided.
const nothingChecked = "nothing was checked: no rule of the packs applies to this design at its stage"

// nothingReviewed warns of a run that had no design at all.
const nothingReviewed = "no design was reviewed"

// ruleID names a rule across packs, "pack:rule".
func ruleID(r *checker.Result) string { return r.Pack + ":" + r.Rule.ID }

// finding is what was found, in one line: the message, or the rule's title where
// a rule says nothing.
func finding(r *checker.Result) string {
	return oneLine(cmp.Or(message(r), r.Rule.Title))
}

// message is empty for a missing input: what is missing is always told apart.
func message(r *checker.Result) string {
	if r.Outcome == rules.Open {
		return ""
	}
	return r.Message
}

// reasonsOf leaves out what the message says already.
func reasonsOf(r *checker.Result) []string {
	return slices.DeleteFunc(slices.Clone(r.Reasons), func(reason string) bool { return reason == message(r) })
}

// problemText is a problem in one line, with what it takes to know what kind of
// problem it is and how far off the design is.
func problemText(r *checker.Result) string {
	switch r.Outcome {
	case rules.Open:
		return fmt.Sprintf("open, needs %s: %s", oneLine(strings.Join(missingKeys(r), ", ")), finding(r))
	case rules.Review:
		return "to be judged: " + finding(r) + reasons(r)
	}
	text := finding(r)
	for _, c := range telling(r) {
		text += "; " + demand(c)
	}
	return text
}

func reasons(r *checker.Result) string {
	if all := reasonsOf(r); len(all) > 0 {
		return "; " + oneLine(strings.Join(all, "; "))
	}
	return ""
}

func missingKeys(r *checker.Result) []string {
	var keys []string
	for _, m := range r.Missing {
		keys = append(keys, m.Key)
	}
	if len(keys) == 0 {
		return []string{"an input that the design does not give"}
	}
	return keys
}

// telling lists the comparisons that explain a result: those that do not hold,
// or all of them when the rule turns on ones that do.
func telling(r *checker.Result) []checker.Comparison {
	var off []checker.Comparison
	for _, c := range r.Comparisons {
		if !c.Holds {
			off = append(off, c)
		}
	}
	if len(off) == 0 {
		return r.Comparisons
	}
	return off
}

// demand puts a comparison into words: "found 6 ft, required at least 10 ft,
// short by 4 ft".
func demand(c checker.Comparison) string {
	text := fmt.Sprintf("found %s, required %s", found(c), required(c))
	if c.Of != "" {
		text = "for " + c.Of + " " + text
	}
	if c.Difference != "" {
		text += fmt.Sprintf(", %s %s", strings.ToLower(wanting(c)), c.Difference)
	}
	return oneLine(text)
}

// required is the right side of a comparison with its operator in words.
func required(c checker.Comparison) string {
	switch {
	case yesOrNo(c):
		return requiredTruth(c)
	case c.Operator == "==" && strings.IndexFunc(c.Required, unicode.IsLetter) == 0:
		return c.Required
	}
	words := map[string]string{
		">=": "at least", "<=": "at most", ">": "more than", "<": "less than",
		"!=": "other than", "==": "exactly", "in": "one of", "not in": "none of",
		"contains": "text with", "does not contain": "text without",
		"startsWith": "text that begins with", "does not start with": "text that does not begin with",
		"endsWith": "text that ends with", "does not end with": "text that does not end with",
	}
	word, ok := words[c.Operator]
	if !ok {
		word = c.Operator
	}
	return strings.TrimSpace(word + " " + c.Required)
}

// wanting labels the difference of a comparison.
func wanting(c checker.Comparison) string {
	switch c.Operator {
	case ">=", ">":
		return "Short by"
	case "<=", "<":
		return "Over by"
	}
	return "Off by"
}

// outcomeWords names outcomes for people.
var outcomeWords = map[rules.Outcome]string{
	rules.Fail: "fail", rules.Open: "open", rules.Review: "to be judged", rules.Pass: "pass",
	rules.Informational: "for information", rules.NotDue: "not due", rules.NotApplicable: "does not apply",
}

// weight says what a missing input or a judgement may turn into.
func weight(l rules.Level) string {
	switch l {
	case rules.Warning:
		return "advisory"
	case rules.Note:
		return "note"
	}
	return "correction"
}

// shownLevel is the level for readers that know only levels. What a person must
// judge never fails a review, so it is a note there whatever it may turn into.
func shownLevel(r *checker.Result) rules.Level {
	if r.Outcome == rules.Review {
		return rules.Note
	}
	return r.Level
}

// asks tells whether an outcome asks something of the designer, accepted or not.
func asks(r *checker.Result) bool {
	return r.Outcome.Problem()
}

// subjects lists the labels of what a rule was asked of.
func subjects(r *checker.Result) string {
	var labels []string
	for _, s := range r.Subjects {
		labels = append(labels, s.Label)
	}
	if len(labels) == 0 {
		return "the dwelling"
	}
	return oneLine(strings.Join(labels, ", "))
}

// projectOf is never nil, so that formats need not ask.
func projectOf(r *checker.Report) *design.Project {
	if r.Design == nil || r.Design.Project == nil {
		return &design.Project{}
	}
	return r.Design.Project
}

func textOr(s *string, otherwise string) string {
	if s == nil || *s == "" {
		return otherwise
	}
	return *s
}

// plural gives "1 correction" or "2 corrections".
func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// mistake is a mistake in a design file, in one line.
func mistake(p document.Problem) string {
	return oneLine(joined("; ", joined(": ", p.Path, p.Message), p.Hint))
}
