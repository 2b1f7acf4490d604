package reportfmt

import (
	"regexp"
	"strings"
	"sync"

	"github.com/ventlint/ventlint/checker"
)

// joins tells how the comparisons of a rule belong together, as far as its condition
// says so in a way that is plain to see.
func joins(r *checker.Result) string {
	switch condition := quoted().ReplaceAllString(r.Rule.Require, `""`); {
	case alternatives().MatchString(condition):
		return "some of these may be enough"
	case strings.Contains(condition, " and ") || strings.Contains(condition, "&&"):
		return "all of these"
	}
	return "these, joined as the rule says"
}

var (
	quoted       = pattern(`"[^"]*"|'[^']*'`)
	alternatives = pattern(`\bor\b|\|\||\?|\bnot\b|!|\bany\(|\bone\(|\bnone\(`)
)

// pattern is compiled when it is first asked for: most reports need none.
func pattern(text string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}

// found is the left side of a comparison. What is only true or false says what it
// is about, since yes and no alone tell nothing.
func found(c checker.Comparison) string {
	switch {
	case !yesOrNo(c):
		return c.Found
	case given().MatchString(c.Text):
		return inWords(given().FindStringSubmatch(c.Text)[1]) + " is " + givenWords[c.Found]
	}
	return inWords(c.Text) + ": " + c.Found
}

// requiredTruth is the right side of a comparison that is only true or false.
func requiredTruth(c checker.Comparison) string {
	if given().MatchString(c.Text) {
		return givenWords[c.Required]
	}
	return c.Required
}

func yesOrNo(c checker.Comparison) bool {
	return c.Operator == "==" && givenWords[c.Found] != "" && givenWords[c.Required] != ""
}

var (
	givenWords = map[string]string{"yes": "given", "no": "not given"}
	given      = pattern(`^known\(([^()]*)\)$`)
	keys       = pattern(`^[a-z_]*(\.[a-z_]+)+$`)
)

// inWords says a path of keys the way people do: "unit.manual_override" is "unit
// manual override". Any other expression stays as it is.
func inWords(text string) string {
	if !keys().MatchString(text) {
		return text
	}
	return strings.TrimSpace(spaced.Replace(text))
}

var spaced = strings.NewReplacer(".", " ", "_", " ")
