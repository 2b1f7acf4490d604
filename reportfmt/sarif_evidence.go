package reportfmt

import (
	"slices"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// evidenceFormat writes SARIF 2.1.0 with everything that a review found, to be
// kept with a submittal: every outcome with its kind, what variances accept, the
// standards that rules cite, and how results stand to an earlier review. A rule
// that is not due yet is one that does not apply; its properties tell the two
// apart.
type evidenceFormat struct{}

func (evidenceFormat) Name() string { return "sarif-evidence" }

func (evidenceFormat) begin(s Setting, o Output) writer {
	return &evidenceWriter{
		log: sarifLogOf(s, o), absent: parts{aside: o.Aside()}, reports: parts{aside: o.Aside()},
		cited: citations{},
	}
}

func (c *changes) evidenceOf(p placed) sarifResult {
	r := p.Result
	result := sarifResultOf(p)
	result.Kind = kindOf(r.Outcome)
	result.Level = string(r.Level)
	if r.Outcome != rules.Fail {
		result.Level = "none" // what it weighs stands in the properties
	}
	result.Suppressions = &[]sarifSuppression{}
	if r.Variance != nil {
		result.Suppressions = &[]sarifSuppression{suppressionOf(p.File, r)}
	}
	result.Baseline = c.state(r)
	result.Properties = &sarifResultProperties{
		Outcome: string(r.Outcome), Level: string(r.Level), Topic: string(r.Rule.Topic), Due: string(r.Rule.Due),
		Comparisons: each(r.Comparisons, jsonComparisonOf),
		Missing:     each(r.Missing, func(m checker.MissingInput) string { return m.Key }),
		Reasons:     slices.Clone(r.Reasons),
		Stated:      slices.Clone(r.Stated),
		Limits:      each(r.Limits, jsonLimitOf),
	}
	return result
}

// kindOf is an outcome in the words of the standard.
func kindOf(o rules.Outcome) string {
	if o == rules.NotDue {
		return string(rules.NotApplicable)
	}
	return string(o)
}

// suppressionOf is a variance. It stands in the design itself: the standard calls
// that in source.
func suppressionOf(file string, r *checker.Result) sarifSuppression {
	v := r.Variance
	return sarifSuppression{
		Kind: "inSource", Status: "accepted", Justification: v.Reason,
		Location: &sarifLocation{Physical: sarifPhysicalOf(file, v.Position()), Logical: sarifLogicalOf(v.Pointer())},
		Properties: &sarifSuppressionProperties{
			Rule: v.Rule, Subject: textOr(v.Subject, ""), By: v.By, Until: textOr(v.Until, ""),
		},
	}
}

// absentEvidence is what the baseline had and a report no longer has: where one
// result tells its state, all must, and those that are gone are listed.
func absentEvidence(e earlier) sarifResult {
	result := sarifResult{
		RuleID: e.Rule, RuleIndex: unplaced, Kind: kindOf(e.Outcome), Level: "none",
		Message: sarifText{Text: sarifPlain(sentence(oneLine(e.Message)))},
		Locations: []sarifLocation{{
			Physical: sarifPhysical{Artifact: sarifArtifactOf(e.File), Region: sarifRegionOf(e.Position)},
			Logical:  sarifLogicalOf(e.Pointer),
		}},
		Fingerprints: sarifFingerprints{Subject: e.Fingerprint},
		Suppressions: &[]sarifSuppression{},
		Baseline:     absentState,
		Properties:   &sarifResultProperties{Outcome: string(e.Outcome), Level: string(e.Level)},
	}
	if e.Outcome == rules.Fail && e.Level != "" {
		result.Level = string(e.Level)
	}
	if e.Accepted {
		result.Suppressions = &[]sarifSuppression{{Kind: "inSource", Status: "accepted"}}
	}
	return result
}
