package expression

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestVariants(t *testing.T) {
	for text, want := range map[string][]string{
		"inlet.x >= 10 ft":                                {"inlet.x > 10 ft", "inlet.x < 10 ft", "inlet.x >= (10 ft * 1.01)", "inlet.x >= (10 ft * 0.99)"},
		"inlet.x < limit.gap":                             {"inlet.x <= limit.gap", "inlet.x >= limit.gap", "inlet.x < (limit.gap * 1.01)", "inlet.x < (limit.gap * 0.99)"},
		"inlet.warm > 0 C":                                {"inlet.warm >= 0 C", "inlet.warm <= 0 C"},
		"inlet.x > limit.local":                           nil, // not set: never known
		"inlet.x > max(limit.local, 3 ft)":                {},
		"inlet.kind not in ['inlet']":                     {"(not (inlet.kind not in ['inlet']))"},
		"inlet.kind == 'inlet'":                           {"inlet.kind != 'inlet'"},
		"inlet.kind in ['inlet']":                         {"(not (inlet.kind in ['inlet']))"},
		"not inlet.open":                                  {"(inlet.open)", "not (not (inlet.open))"},
		"inlet.open or known(inlet.tag)":                  {"(known(inlet.tag))", "(inlet.open)", "(not (inlet.open)) or known(inlet.tag)", "inlet.open or (not (known(inlet.tag)))"},
		"all(vents, .open)":                               {"any(vents, .open)", "all(vents, (not (.open)))"},
		"(let a = inlet.open; a and a)":                   {"(let a = (not (inlet.open)); a and a)", "(let a = inlet.open; (a))", "(let a = inlet.open; (a))"},
		"inlet.open ? true : false":                       {"(true)", "(false)", "(not (inlet.open)) ? true : false", "inlet.open ? (not (true)) : false", "inlet.open ? true : (not (false))"},
		"count(vents, .open) > 0":                         {"count(vents, .open) >= 0", "count(vents, .open) <= 0", "count(vents, (not (.open))) > 0"},
		"(inlet.flow ?? max(1 cfm, limit.rate)) != 0 cfm": {"(inlet.flow ?? max(1 cfm, limit.rate)) == 0 cfm"},
	} {
		var got []string
		for _, v := range condition(t, text).Variants() {
			got = append(got, v.Source)
			assert.NotEmpty(t, v.Change)
		}
		assert.ElementsMatch(t, want, got, text)
	}
}

func TestVariantsSayWhatChanged(t *testing.T) {
	variants := condition(t, "inlet.open and inlet.x >= 10 ft").Variants()
	require.NotEmpty(t, variants)
	assert.Equal(t, Variant{Source: "(inlet.x >= 10 ft)", Change: `without "inlet.open"`, Offset: 0, Length: 31}, variants[0])
	assert.Equal(t, `">=" turned into ">" in "inlet.x >= 10 ft"`, variants[3].Change)
}

// Every variant of every expression of the tests compiles, and is another text.
func TestVariantsCompile(t *testing.T) {
	n := 0
	for text := range truths {
		for _, v := range condition(t, text).Variants() {
			_, err := newLanguage(t).Condition(v.Source, ruleNames())
			assert.NoError(t, err, "%s\n%s", text, v.Source)
			assert.NotEqual(t, text, v.Source)
			assert.Equal(t, strings.Count(v.Source, "("), strings.Count(v.Source, ")"), v.Source)
			n++
		}
	}
	assert.Greater(t, n, 300)
}
