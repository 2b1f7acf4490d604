package reportfmt

import (
	"bytes"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// batches is what every format is tested with, by the name of its golden file.
func batches() map[string]Batch {
	several := batch(everyOutcome(), report("designs/a-clean.vent.toml", quiet(rules.Pass)))
	several.Failures = []Failure{brokenFile()}
	invalid := batch()
	invalid.Failures = []Failure{brokenFile(), {File: "designs/unread.vent.toml",
		Problems: []document.Problem{{Message: "cannot be read: no such file"}}}}
	return map[string]Batch{
		"clean":     batch(report("designs/clean.vent.toml", quiet(rules.Pass), quiet(rules.NotApplicable, "the dwelling has no garage"))),
		"outcomes":  batch(everyOutcome()),
		"variances": batch(withVariances()),
		"baseline":  compared(),
		"odd":       batch(oddCharacters()),
		"hostile":   batch(hostileNames()),
		"several":   several,
		"invalid":   invalid,
		"nothing":   batch(report("designs/empty.vent.toml", quiet(rules.NotDue, "due from the stage final"))),
		"none":      batch(),
	}
}

// oddCharacters calls things what no one should: by terminal sequences, marks
// of writing direction, markup, placeholders, links, and very long words.
func oddCharacters() *checker.Report {
	r := failedSeparation()
	r.Subjects[0] = subject("intake", "intake \"\x1b[31mfresh\x1b[0m\u202eevil\u2028\"", "fr\x1besh")
	r.Message = "intake \"a](https://example.invalid)\" {0} <b>is</b> | near\r\n::error::`x` \x9b2J \xff, \u00e9t\u00e9 \u901a\u98a8\u53e3"
	r.Comparisons[0].Found = "6 ft\a"
	r.Rule.Title = "Title with *stars*, _lines_ and \x07"
	r.Rule.Remedy = "first line\nsecond line, and a word of " + long(200)
	r.Rule.Caution = "beware\tof tabs"
	r.Rule.Basis[0].Document = "Code\x00of nothing"
	odd := report("designs/\x1b[2Jodd name.vent.toml", r)
	odd.Design.Project.Name = "Lot\x1b]0;title\a \U000e0041"
	odd.Assumptions = []checker.Assumption{{Text: "zero\u200bwidth", Basis: "soft\u00adhyphen"}}
	return odd
}

func long(n int) string {
	b := make([]byte, n)
	for i := range b {
		b[i] = 'w'
	}
	return string(b)
}

func brokenFile() Failure {
	return Failure{File: "designs/broken.vent.toml", Problems: []document.Problem{
		{Position: at(12, 9, 13), Path: "dwelling.floor_area", Message: `"2150" needs a unit, expected an area such as "2150 ft2"`},
		{Position: at(31, 8, 15), Path: "opening[1].kind", Message: `unknown kind "exhuast", expected one of intake, exhaust`,
			Hint: `did you mean "exhaust"?`},
	}}
}

// hostileNames calls things by what spreadsheets, XML, HTML, Markdown and the
// hosts of builds would take for their own.
func hostileNames() *checker.Report {
	r := failedSeparation()
	r.Subjects[0] = placedAt(subject("intake", `=HYPERLINK("https://example.invalid","fresh")`, "=1+1"), at(40, 6, 13), "/opening/0")
	r.Subjects[1].Label = "::stop-commands::x"
	r.Message = "::error file=a,line=1::%0A::add-mask::x%25"
	r.Comparisons[0].Found, r.Comparisons[0].Required = "-2+3", "@SUM(A1)"
	r.Rule.Title = `]]></failure><script>alert("x")</script>&amp;`
	r.Rule.Remedy = "# heading\n- item\n1. item\n![image](https://example.invalid) |a|b| ~~~ ```"
	r.Rule.Basis[0].Section = "\uff1d1+1"
	accepted := acceptedSeparation()
	accepted.Variance.Reason, accepted.Variance.By = "+1", "\t=1"
	hostile := report("designs/=a,b: 100% <&>.vent.toml", r, accepted)
	hostile.Design.Project.Name = "| - | \ufffe"
	return hostile
}

// withVariances has an accepted failure, an accepted missing input, a variance
// that ended and one that accepts nothing.
func withVariances() *checker.Report {
	open := openAccess()
	open.Variance = &design.Variance{Rule: "working-space", Reason: "the unit is not chosen yet", By: "plan reviewer"}
	r := report("designs/alder-12.vent.toml", acceptedSeparation(), open, heaterPressure())
	r.Remarks = []checker.Remark{
		{Text: `the variance from "house-pressure" counts for nothing: it ended on 2026-01-31`, Position: at(140, 9, 21)},
		{Text: `the variance from "whole-house-rates" counts for nothing: no pack of this review holds such a rule; ` +
			`did you mean "whole-house-rate"?`, Position: at(147, 8, 27)},
	}
	return r
}

// compared has new problems, known ones on other lines, one that fails where it
// was open, one that was accepted, and some that are gone.
func compared() Batch {
	gone := failedSeparation()
	gone.Subjects[1] = placedAt(subject("exhaust", `exhaust "bath"`, "bath"), at(55, 6, 12), "/opening/2")
	gone.Message = `intake "fresh" is 8 ft from exhaust "bath"`
	was := openAccess()
	earlier := report("designs/alder-12.vent.toml", gone, was, advisedFlow(), acceptedSeparation(), quiet(rules.Pass))
	other := report("designs/not-reviewed-now.vent.toml", heaterPressure())

	moved := advisedFlow()
	moved.Position = at(172, 16, 24)
	now := openAccess()
	now.Outcome, now.Missing, now.Message = rules.Fail, nil, "the space is 24 in deep"
	ended := acceptedSeparation()
	ended.Variance = nil
	b := batch(report("designs/alder-12.vent.toml", moved, now, ended, heaterPressure(), quiet(rules.Pass)))
	b.Baseline = baselineFrom("sarif-evidence", batch(earlier, other))
	return b
}

// baselineFrom writes a batch and reads it as a baseline.
func baselineFrom(format string, b Batch) *Baseline {
	f, err := Named(format)
	if err != nil {
		panic(err)
	}
	var out bytes.Buffer
	if err := Write(&out, f, b); err != nil {
		panic(err)
	}
	baseline, err := ReadBaseline(&out)
	if err != nil {
		panic(err)
	}
	return baseline
}
