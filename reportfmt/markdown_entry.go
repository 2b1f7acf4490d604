package reportfmt

import (
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// entry writes one item as a list, and what was compared as a table.
func (n *notice) entry(file string, r *checker.Result) {
	var items []string
	add := func(label string, texts ...string) {
		for _, text := range texts {
			if text = oneLine(text); text != "" {
				items = append(items, fmt.Sprintf("- **%s:** %s", label, markdownText(text)))
			}
		}
	}
	add("Where", subjects(r)+", "+placeText(file, r.Position))
	add("Rule", ruleID(r))
	if r.Variance == nil && r.Outcome != rules.Fail {
		add("May become", weight(r.Level))
	}
	add("Finding", message(r))
	if r.Outcome == rules.Open {
		add("Missing", missingKeys(r)...)
	}
	add("Reason", reasonsOf(r)...)
	add("As drawn", r.Stated...)
	add("Basis", basisTexts(r.Rule.Basis)...)
	add("Limit", localLimits(r)...)
	if r.Variance != nil {
		add("Accepted", variance(r))
	} else {
		add("Remedy", r.Remedy)
	}
	add("Caution", r.Rule.Caution)
	n.block(items...)
	n.comparisons(r)
}

// comparisons writes what was found beside what is asked; where several
// comparisons tell, one of them may be enough, so the rule's own text goes first.
func (n *notice) comparisons(r *checker.Result) {
	told := telling(r)
	if r.Outcome == rules.Open || len(told) == 0 {
		return
	}
	if len(told) > 1 {
		n.block("Asked: " + joins(r) + ": " + markdownCode(oneLine(r.Rule.Require)))
	}
	lines := []string{"| Compared | Found | Asked | Wanting |", "| --- | --- | --- | --- |"}
	for _, c := range told {
		compared := joined(": ", markdownText(oneLine(c.Of)), tableCode(oneLine(c.Text)))
		lines = append(lines, tableRow(compared, markdownText(oneLine(found(c))), markdownText(oneLine(required(c))), markdownText(difference(c))))
	}
	n.block(lines...)
}

// difference is what is wanting, "short by 4 ft".
func difference(c checker.Comparison) string {
	if c.Difference == "" {
		return ""
	}
	return oneLine(strings.ToLower(wanting(c)) + " " + c.Difference)
}

func tableRow(cells ...string) string { return "| " + strings.Join(cells, " | ") + " |" }

// tableCode is code in a table, whose cells end at a bar even inside code.
func tableCode(text string) string { return strings.ReplaceAll(markdownCode(text), "|", `\|`) }

func (n *notice) variances(r *checker.Report) {
	all := accepted(r)
	if len(all) == 0 {
		return
	}
	n.block("## Accepted variances")
	n.block("Departures that the design records as accepted.")
	for _, result := range all {
		n.block("### " + markdownText(oneLine(result.Rule.Title)))
		n.entry(r.File, result)
	}
}
