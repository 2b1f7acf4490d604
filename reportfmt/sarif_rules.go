package reportfmt

import (
	"maps"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// Bounds, in characters, of what hosts take of a rule's name and descriptions.
const (
	longestName        = 255
	longestDescription = 1024
)

// sarifRuleBook describes rules by their id. Designs may print one in different
// units, so it is as the first file in order has it.
type sarifRuleBook map[string]sarifDescribed

type sarifDescribed struct {
	file string
	rule sarifRule
}

// add describes the rules of the results of one file.
func (b sarifRuleBook) add(file string, found []placed) {
	for _, p := range found {
		id := ruleID(p.Result)
		if known, ok := b[id]; !ok || file < known.file {
			b[id] = sarifDescribed{file, sarifRuleOf(id, p.Result)}
		}
	}
}

func (b sarifRuleBook) ids() []string { return slices.Sorted(maps.Keys(b)) }

func sarifRuleOf(id string, r *checker.Result) sarifRule {
	rule := r.Rule
	title := oneLine(rule.Title)
	full := sentences([]string{title, "Due from the stage " + string(rule.Due), labelled("Remedy: ", r.Advice)})
	tags := []string{string(rule.Topic), r.Pack}
	slices.Sort(tags)
	return sarifRule{
		ID:            id,
		Name:          clipped(rule.ID, longestName),
		DeprecatedIDs: each(rule.Aliases, func(alias string) string { return r.Pack + ":" + alias }),
		Short:         sarifText{Text: clipped(sarifPlain(title), longestDescription)},
		Full:          sarifText{Text: clipped(sarifPlain(full), longestDescription)},
		Help:          sarifText{Text: sarifPlain(helpText(r)), Markdown: bracesDoubled(helpMarkdown(r))},
		Configuration: sarifConfig{Level: string(rule.Level)},
		Properties:    sarifProperties{Tags: slices.Compact(tags)},
	}
}

// helpParts is what a reader of an alert gets to know about a rule, in order.
func helpParts(r *checker.Result) [][2]string {
	parts := [][2]string{
		{"Due from the stage", string(r.Rule.Due)},
		{"Remedy", oneLine(r.Advice)},
		{"Caution", oneLine(r.Rule.Caution)},
		{"Left to a person", judging(r.Rule)},
	}
	for _, b := range basisTexts(r.Rule.Basis) {
		parts = append(parts, [2]string{"Basis", b})
	}
	for _, l := range localLimits(r) {
		parts = append(parts, [2]string{"Limit", l})
	}
	return parts
}

// judging tells when a rule leaves to a person what does not meet it.
func judging(rule *rules.Rule) string {
	switch {
	case rule.Judge:
		return "what does not meet this rule is for a person to judge, and does not fail"
	case rule.JudgeWhen != "":
		return "what does not meet this rule is for a person to judge where " + oneLine(rule.JudgeWhen)
	}
	return ""
}

func helpText(r *checker.Result) string {
	lines := []string{sentence(oneLine(r.Rule.Title))}
	lines = append(lines, labelled("Applies when: ", oneLine(r.Rule.When)), labelled("Requires: ", oneLine(r.Rule.Require)))
	for _, p := range helpParts(r) {
		lines = append(lines, labelled(p[0]+": ", p[1]))
	}
	return joined("\n", append(lines, closing)...)
}

func helpMarkdown(r *checker.Result) string {
	blocks := []string{"**" + markdownText(sentence(oneLine(r.Rule.Title))) + "**"}
	for _, e := range [][2]string{{"Applies when", r.Rule.When}, {"Requires", r.Rule.Require}} {
		if e[1] != "" {
			blocks = append(blocks, e[0]+": "+markdownCode(oneLine(e[1])))
		}
	}
	for _, p := range helpParts(r) {
		if p[1] != "" {
			blocks = append(blocks, p[0]+": "+markdownText(p[1]))
		}
	}
	return strings.Join(append(blocks, "_"+closing+"_"), "\n\n")
}

// clipped cuts a text to a number of characters, and shows that it did.
func clipped(text string, most int) string {
	characters := []rune(text)
	if len(characters) <= most {
		return text
	}
	return string(characters[:most-1]) + "…"
}
