package reportfmt

import (
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

func sarifResultOf(p placed) sarifResult {
	r := p.Result
	related := relatedTo(p)
	return sarifResult{
		RuleID:    ruleID(r),
		RuleIndex: unplaced,
		Level:     string(shownLevel(r)),
		Message:   sarifText{Text: sarifMessage(r, related)},
		Locations: []sarifLocation{{
			Physical: sarifPhysical{Artifact: sarifArtifactOf(p.File), Region: sarifRegionOf(r.Position)},
			Logical:  sarifLogicalOf(r.Pointer),
		}},
		Related:      related.locations(),
		Fingerprints: sarifFingerprints{Subject: fingerprint(r)},
		Properties:   &sarifResultProperties{Outcome: string(r.Outcome)},
	}
}

// sarifMessage begins with a sentence that stands alone, because hosts show it
// as the title. Then come subject, arithmetic, what to do, what to beware of.
func sarifMessage(r *checker.Result, related relatedPlaces) string {
	parts := []string{sarifLead(r), "Subject: " + subjects(r)}
	if r.Outcome != rules.Open {
		for _, c := range telling(r) {
			text := demand(c)
			parts = append(parts, strings.ToUpper(text[:1])+text[1:])
		}
	}
	for _, reason := range reasonsOf(r) {
		parts = append(parts, "Reason: "+reason)
	}
	for _, stated := range r.Stated {
		parts = append(parts, "As drawn: "+stated)
	}
	if asks(r) {
		parts = append(parts, labelled("Remedy: ", r.Remedy), labelled("Caution: ", r.Rule.Caution))
	}
	return joined(" ", sarifPlain(sentences(parts)), related.text(), confirm)
}

// sarifLead says what became of the rule. A failed rule needs no word for it: its
// message says what is wrong.
func sarifLead(r *checker.Result) string {
	switch r.Outcome {
	case rules.Open:
		return fmt.Sprintf("input missing (%s): %s", oneLine(strings.Join(missingKeys(r), ", ")), finding(r))
	case rules.Review:
		return "to be judged: " + finding(r)
	case rules.Pass:
		return "holds: " + finding(r)
	case rules.NotDue:
		return "not due yet: " + finding(r)
	case rules.NotApplicable:
		return "does not apply: " + finding(r)
	}
	return finding(r)
}

// sarifPlain takes from a text of the design or a pack the power to be a link or
// a placeholder.
func sarifPlain(text string) string {
	return bracesDoubled(strings.ReplaceAll(text, "](", "] ("))
}

// bracesDoubled writes braces that are no placeholder as the standard asks, in
// plain texts and in Markdown (section 3.11.5).
func bracesDoubled(text string) string {
	return doubled.Replace(text)
}

// bracesSingle takes bracesDoubled back.
func bracesSingle(text string) string {
	return single.Replace(text)
}

var (
	doubled = strings.NewReplacer("{", "{{", "}", "}}")
	single  = strings.NewReplacer("{{", "{", "}}", "}")
)

func labelled(label, text string) string {
	if text == "" {
		return ""
	}
	return label + text
}

// sentences joins texts, each ended with a full stop, leaving empty ones out.
func sentences(parts []string) string {
	var all []string
	for _, part := range parts {
		if part != "" {
			all = append(all, sentence(oneLine(part)))
		}
	}
	return strings.Join(all, " ")
}

func sentence(text string) string {
	if strings.HasSuffix(text, ".") || strings.HasSuffix(text, "?") {
		return text
	}
	return text + "."
}
