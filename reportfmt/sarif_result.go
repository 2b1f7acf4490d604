package reportfmt

import (
	"fmt"
	"github.com/ventlint/ventlint/rules"
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/document"
)

// mostRelated bounds the places that a result links to; hosts keep a hundred,
// readers fewer.
const mostRelated = 20

func sarifResultOf(p placed, index map[string]int) sarifResult {
	r := p.Result
	related := sarifRelated(p)
	return sarifResult{
		RuleID:    ruleID(r),
		RuleIndex: index[ruleID(r)],
		Level:     string(shownLevel(r)),
		Message:   sarifText{Text: sarifMessage(r, related)},
		Locations: []sarifLocation{{
			Physical: sarifPhysical{Artifact: sarifArtifactOf(p.File), Region: sarifRegionOf(r.Position)},
			Logical:  sarifLogicalOf(r.Pointer),
		}},
		Related:      related,
		Fingerprints: sarifFingerprints{Subject: fingerprint(r)},
	}
}

func sarifLogicalOf(pointer string) []sarifLogical {
	if pointer == "" {
		return nil
	}
	return []sarifLogical{{FullyQualifiedName: pointer}}
}

// sarifRelated lists the keys that are missing, or those that decided.
func sarifRelated(p placed) []sarifLocation {
	var all []sarifLocation
	add := func(key string, at document.Position) {
		if len(all) < mostRelated {
			all = append(all, sarifLocation{
				ID:       len(all) + 1,
				Physical: sarifPhysical{Artifact: sarifArtifactOf(p.File), Region: sarifRegionOf(at)},
				Message:  &sarifText{Text: sarifPlain(oneLine(key))},
			})
		}
	}
	if p.Result.Outcome == rules.Open {
		for _, m := range p.Result.Missing {
			add(m.Key, m.Position)
		}
		return all
	}
	for _, i := range p.Result.Inputs {
		add(i.Key, i.Position)
	}
	return all
}

// sarifMessage begins with a sentence that stands alone, because hosts show it
// as the title. Then come subject, arithmetic, what to do, what to beware of.
func sarifMessage(r *checker.Result, related []sarifLocation) string {
	lead := finding(r)
	switch r.Outcome {
	case rules.Open:
		lead = fmt.Sprintf("input missing (%s): %s", oneLine(strings.Join(missingKeys(r), ", ")), lead)
	case rules.Review:
		lead = "to be judged: " + lead
	}
	parts := []string{lead, "Subject: " + subjects(r)}
	if r.Outcome != rules.Open {
		for _, c := range telling(r) {
			text := demand(c)
			parts = append(parts, strings.ToUpper(text[:1])+text[1:])
		}
	}
	for _, reason := range r.Reasons {
		parts = append(parts, "Reason: "+reason)
	}
	for _, stated := range r.Stated {
		parts = append(parts, "As drawn: "+stated)
	}
	parts = append(parts, labelled("Remedy: ", r.Remedy), labelled("Caution: ", r.Rule.Caution))
	text := sarifPlain(sentences(parts))
	if len(related) > 0 {
		text += " " + sentence("Keys: "+sarifLinks(related))
	}
	return text + " " + confirm
}

func sarifLinks(related []sarifLocation) string {
	var links []string
	for _, l := range related {
		text := strings.NewReplacer(`\`, `\\`, "[", `\[`, "]", `\]`).Replace(l.Message.Text)
		links = append(links, fmt.Sprintf("[%s](%d)", text, l.ID))
	}
	return strings.Join(links, ", ")
}

// sarifPlain takes from a text of the design or a pack the power to be a link or
// a placeholder.
func sarifPlain(text string) string {
	return bracesDoubled(strings.ReplaceAll(text, "](", "] ("))
}

// bracesDoubled writes braces that are no placeholder as the standard asks, in
// plain texts and in Markdown (section 3.11.5).
func bracesDoubled(text string) string {
	return strings.NewReplacer("{", "{{", "}", "}}").Replace(text)
}

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
