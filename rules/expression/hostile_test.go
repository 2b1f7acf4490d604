package expression

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document/documenttest"
)

// Packs come from anywhere. None of these expressions compiles, and finding that
// out takes little memory.
func TestHostileSources(t *testing.T) {
	l := newLanguage(t)
	for name, text := range map[string]string{
		"a million parentheses":        strings.Repeat("(", 1_000_000) + "true" + strings.Repeat(")", 1_000_000),
		"four thousand parentheses":    strings.Repeat("(", 4000),
		"two thousand parentheses":     strings.Repeat("(", 1999) + "tru" + strings.Repeat(")", 1999),
		"five million brackets":        strings.Repeat("[", 5_000_000),
		"four thousand brackets":       strings.Repeat("[", 4000),
		"four thousand braces":         strings.Repeat("{", 4000),
		"negations":                    strings.Repeat("!", 4000) + "true",
		"negatives":                    strings.Repeat("-", 4000) + "1 > 0",
		"conditions":                   strings.Repeat("true?", 800) + "true" + strings.Repeat(":true", 800),
		"sum of many":                  strings.Repeat("1+", 2000) + "1 > 0",
		"long list":                    "1 in [" + strings.Repeat("1,", 2000) + "1]",
		"many names":                   strings.Repeat("let a=1;", 500) + "true",
		"members":                      "inlet" + strings.Repeat(".room", 800),
		"calls of calls":               "gap" + strings.Repeat("()", 2000),
		"chained comparisons":          strings.Repeat("true == (", 100) + "1 < 2 < 3" + strings.Repeat(") == true", 100),
		"range":                        "1..1000000000",
		"range in a loop":              "all(1..900, all(1..900, all(1..900, true)))",
		"repeat":                       "len(repeat(repeat('x', 999998), 999999)) > 0",
		"replace":                      "len(replace('a', 'a', 'b')) > 0",
		"join":                         "join(map(vents, .id), 'x') == ''",
		"reduce":                       "reduce(vents, #acc + #acc, 'x') == 'x'",
		"text doubling":                "let a='xxxxxxxxxx'; let b=a+a+a+a; let d=b+b+b+b; len(d) > 1",
		"toJSON":                       "len(toJSON(vents)) > 3",
		"flatten":                      "len(flatten([vents])) > 3",
		"uniq":                         "len(uniq(vents)) > 1",
		"pattern":                      "inlet.id matches '(a*)*'",
		"pattern from data":            "count(vents, .id matches .id) > 0",
		"constant pattern":             "inlet.id matches '((a{0,100}){0,100}){0,100}'",
		"environment":                  "$env['vents'] == vents",
		"environment method":           "$env.Facts() == 1",
		"method":                       "inlet.Self() == 1",
		"method of a list":             "vents.Len() == 1",
		"clock":                        "now() > now()",
		"power":                        "9 ** 999999999 > 1",
		"large whole number":           "9223372036854775808 > 1",
		"large number":                 "1e999 > 1",
		"large quantity":               "1" + strings.Repeat("0", 400) + " m > 1 m",
		"long text":                    "inlet.id == '" + strings.Repeat("x", 300) + "'",
		"group":                        "len(groupBy(vents, .id)) > 0",
		"sort":                         "sortBy(vents, .x)[0].x > 1 m",
		"control characters":           "inlet.id == \x00",
		"broken encoding":              "inlet.\xff\xfe == 'x'",
		"broken encoding in a literal": "10 \xff ft > 1 ft",
	} {
		t.Run(name, func(t *testing.T) {
			var err error
			documenttest.AtMost(t, 4, func() { _, err = l.Condition(text, ruleNames()) })
			var mistake *Error
			require.True(t, errors.As(err, &mistake), "%v", err)
			assert.NotContains(t, mistake.Message, "goroutine")
			assert.NotContains(t, mistake.Message, "the expression cannot")
			assert.Less(t, len(mistake.Message), 1000)
		})
	}
}

// crowd is a world of many vents.
func crowd(t testing.TB, n, fuel int) *Scope {
	w := newWorld(t)
	for len(w.Vents) < n {
		w.Vents = append(w.Vents, w.Vents[0])
	}
	s := NewScope(w, fuel)
	s.Subjects = []any{w.Vents[0], w.Vents[1]}
	return s
}

// These compile. Their evaluation stops, or stays small.
func TestHostileEvaluations(t *testing.T) {
	nested := func(open, body string) string { return strings.Repeat(open, 4) + body + strings.Repeat(")", 4) }
	for name, attack := range map[string]struct {
		text  string
		stops bool
	}{
		"nested loops":              {nested("all(vents, ", "true"), true},
		"nested loops, fields":      {nested("all(vents, ", ".x > 0 m"), true},
		"nested counts":             {"count(vents, count(vents, count(vents, .x > 0 m) > 0) > 0) > 0", true},
		"nested lists":              {"len(" + nested("map(vents, ", ".x") + ") > 0", true},
		"nested filters":            {nested("any(filter(vents, true), ", "false"), true},
		"unknown in nested loops":   {nested("all(vents, ", "outlet.open"), true},
		"loops over names":          {"let v = vents; all(v, all(v, all(v, all(v, true))))", true},
		"loops over a written list": {strings.Repeat("all([1,2,3,4,5,6,7,8,9,10], ", 8) + "true" + strings.Repeat(")", 8), true},
		"functions in loops":        {"all(vents, all(vents, gap(#, inlet) >= 0 m and gap(#, inlet) >= 0 m and gap(#, inlet) >= 0 m))", true},
		"tables in loops":           {"all(vents, all(vents, table.reach(80 cfm) > 0 m and table.reach(80 cfm) > 0 m))", true},
		"membership in loops":       {"all(vents, all(vents, # in vents or # in vents))", true},
		"membership without end":    {"count(vents, # in vents and inlet in vents and outlet not in [inlet]) == 1000", false},
		"lists of lists":            {"let a=[1,1,1,1]; let b=[a,a,a,a]; let d=[b,b,b,b]; let e=[d,d,d,d]; len(e) == 4 and e[0][0][0][0] == 1", false},
		"doubling names":            {doubling(60) + "n60 > 1", false},
		"nested fallbacks":          {"(" + strings.Repeat("(", 30) + "outlet.flow" + strings.Repeat(" ?? outlet.flow)", 30) + " ?? 1 cfm) > 0 cfm", false},
		"fallbacks in fallbacks":    {strings.Repeat("(outlet.room ?? ", 60) + "inlet.room" + strings.Repeat(")", 60) + " == inlet.room or true", false},
		"keys of fallbacks":         {strings.Repeat("(", 40) + "outlet.room" + strings.Repeat(" ?? inlet.room)", 40) + ".id == 'den'", false},
		"nested known":              {strings.Repeat("known(inlet.room) and ", 50) + "true", false},
	} {
		t.Run(name, func(t *testing.T) {
			c := condition(t, attack.text)
			s := crowd(t, 200, 1_000_000)
			for what, evaluate := range map[string]func() error{
				"truth":   func() error { _, err := c.Truth(s); return err },
				"explain": func() error { _, err := c.Explain(s); return err },
			} {
				var err error
				documenttest.AtMost(t, 200, func() { err = evaluate() })
				if attack.stops {
					assert.ErrorIs(t, err, ErrSteps, what)
				} else {
					assert.NoError(t, err, what)
				}
			}
		})
	}
}

// doubling names a sum twice as long as the one before, n times.
func doubling(n int) string {
	text := "let n0 = 1; "
	for i := 1; i <= n; i++ {
		text += fmt.Sprintf("let n%d = n%d + n%d; ", i, i-1, i-1)
	}
	return text
}

// The fuel of a scope is shared by all its evaluations.
func TestFuelIsAPool(t *testing.T) {
	c := condition(t, "all(vents, .x > 0 m)")
	s := crowd(t, 100, 1000)
	for range 9 {
		_, err := c.Truth(s)
		require.NoError(t, err)
	}
	for range 2 {
		_, err := c.Truth(s)
		assert.ErrorIs(t, err, ErrSteps)
		_, err = c.Explain(s)
		assert.ErrorIs(t, err, ErrSteps)
	}
	list, err := newLanguage(t).List("filter(vents, any(vents, .id == 'a' and #.x < 0 m))", ruleNames())
	require.NoError(t, err)
	_, err = list.Items(crowd(t, 100, 1000))
	assert.ErrorIs(t, err, ErrSteps)
}
