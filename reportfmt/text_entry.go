package reportfmt

import (
	"fmt"
	"strings"

	"github.com/fatih/color"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// short is the style of the figure that a designer looks for.
var short = style{color.Bold, color.FgRed}

// entry writes one item: what is asked, where, what was found, on what ground,
// and what to do.
func (p *page) entry(mark string, s style, file string, r *checker.Result) {
	p.item(mark, s, r.Rule.Title+p.changes.mark(r))
	p.where(file, r)
	p.field("Finding", plain, message(r))
	p.missing(r)
	for _, reason := range reasonsOf(r) {
		p.field("Reason", plain, reason)
	}
	p.comparisons(r)
	for _, stated := range r.Stated {
		p.field("As drawn", plain, stated)
	}
	p.eachField("Basis", basisTexts(r.Rule.Basis))
	p.eachField("Limit", localLimits(r))
	p.field("Remedy", plain, r.Remedy)
	p.field("Caution", strong, r.Rule.Caution)
}

func (p *page) where(file string, r *checker.Result) {
	p.eachField("Where", []string{subjects(r), placeText(file, r.Position)})
	p.field("Rule", plain, ruleID(r))
	if r.Variance == nil && r.Outcome != rules.Fail {
		p.field("May become", plain, weight(r.Level))
	}
}

// eachField writes several values under one label.
func (p *page) eachField(label string, values []string) {
	for _, v := range values {
		p.field(label, plain, v)
		label = ""
	}
}

// placeText is "file:line:column", which editors follow, or the file alone.
func placeText(file string, at document.Position) string {
	if at.Line == 0 {
		return file
	}
	return fmt.Sprintf("%s:%d:%d", file, at.Line, at.Column)
}

func (p *page) missing(r *checker.Result) {
	if r.Outcome != rules.Open {
		return
	}
	if len(r.Missing) == 0 {
		p.eachField("Missing", missingKeys(r))
	}
	label := "Missing"
	for _, m := range r.Missing {
		p.field(label, plain, fmt.Sprintf("%s (line %d)", m.Key, inFile(m.Position).Line))
		label = ""
	}
}

// comparisons writes found, required and what is wanting in aligned lines; where
// several comparisons tell, also how they belong together, since one of them may
// be enough, and what each compares.
func (p *page) comparisons(r *checker.Result) {
	if r.Outcome == rules.Open {
		return
	}
	told := telling(r)
	if len(told) > 1 {
		p.field("Asked", plain, joins(r)+"; see ventlint cite "+ruleID(r))
	}
	for _, c := range told {
		if len(told) > 1 {
			p.field("Comparing", subdued, c.Text)
		}
		p.field("For", plain, c.Of)
		p.field("Found", plain, found(c))
		p.field("Required", plain, required(c))
		p.field(wanting(c), short, c.Difference)
	}
}

// variances writes what was accepted, by whom and until when.
func (p *page) variances(r *checker.Report) {
	all := accepted(r)
	if len(all) == 0 {
		return
	}
	p.chapter("Accepted variances", "Departures that the design records as accepted.")
	for _, result := range all {
		p.blank()
		p.item("*", plain, result.Rule.Title)
		p.where(r.File, result)
		p.field("Finding", plain, message(result))
		p.missing(result)
		p.comparisons(result)
		v := result.Variance
		p.field("Reason", plain, v.Reason)
		p.field("Accepted by", plain, v.By)
		p.field("Until", plain, textOr(v.Until, "no end stated"))
		p.field("Caution", strong, result.Rule.Caution)
	}
}

// countsText tells how many results had each outcome.
func countsText(r *checker.Report) string {
	c := r.Count()
	parts := []string{
		fmt.Sprintf("%d pass", c.Of[rules.Pass]),
		fmt.Sprintf("%d fail", c.Of[rules.Fail]),
		fmt.Sprintf("%d open", c.Of[rules.Open]),
		fmt.Sprintf("%d review", c.Of[rules.Review]),
		fmt.Sprintf("%d accepted", c.Accepted),
		fmt.Sprintf("%d not due", c.Of[rules.NotDue]),
		fmt.Sprintf("%d not applicable", c.Of[rules.NotApplicable]),
	}
	if n := c.Of[rules.Informational]; n > 0 {
		parts = append(parts, fmt.Sprintf("%d for information", n))
	}
	return strings.Join(parts, ", ")
}

// failure writes a notice for a file that could not be reviewed.
func (p *page) failure(f Failure) {
	p.prose(0, strong, "Not reviewed")
	p.blank()
	p.heading("Design file", f.File)
	p.blank()
	p.prose(0, plain, "This file could not be read as a design. Nothing in it was checked.")
	for i, problem := range f.problems() {
		p.blank()
		p.item(fmt.Sprint(i+1), groupStyles[corrections], problem.Message)
		p.field("Where", plain, placeText(f.File, problem.Position))
		p.field("Key", plain, problem.Path)
		p.field("Hint", plain, problem.Hint)
	}
}
