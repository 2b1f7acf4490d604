package reportfmt

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

func TestTruthsInWords(t *testing.T) {
	for _, c := range []struct{ text, found, required, want string }{
		{"unit.manual_override", "no", "yes", "found unit manual override: no, required yes"},
		{"unit.access.blocked", "yes", "no", "found unit access blocked: yes, required no"},
		{".tool_free", "no", "yes", "found tool free: no, required yes"},
		{"same_fitting(a, b)", "no", "yes", "found same_fitting(a, b): no, required yes"},
		{"known(unit.boost)", "no", "yes", "found unit boost is not given, required given"},
		{"known(unit.on_time ?? unit.boost)", "yes", "no", "found unit.on_time ?? unit.boost is given, required not given"},
	} {
		require.Equal(t, c.want, demand(checker.Comparison{Text: c.text, Operator: "==", Found: c.found, Required: c.required}))
	}
	require.Equal(t, "found yes, required other than no", demand(checker.Comparison{Text: "a.b", Operator: "!=", Found: "yes", Required: "no"}))
	require.Equal(t, "found timer, required continuous", demand(checker.Comparison{Text: "a.b", Operator: "==", Found: "timer", Required: "continuous"}))
}

// That all of several comparisons must hold is only told where nothing in the
// condition lets one of them be enough.
func TestHowComparisonsBelongTogether(t *testing.T) {
	const some, all, asPut = "some of these may be enough", "all of these", "these, joined as the rule says"
	for condition, want := range map[string]string{
		"a >= 1 ft and b": all, "a && b": all, `a == "x or y" and b`: all, "a.floor and b.corridor": all,
		"a or b": some, "a || b and c": some, "a ? b : c": some, "not (a and b)": some, "!(a and b)": some,
		"any(list, # > 1 and # < 2)": some, "a ?? b and c": some, "none(list, .a and .b)": some,
		"all(list, .flow > 1 cfm)": asPut,
	} {
		require.Equal(t, want, joins(&checker.Result{Rule: &rules.Rule{Require: condition}}), condition)
	}
}
