package impact

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/expression"
)

// A design counts by what weighs most in it.
func TestDesignState(t *testing.T) {
	for _, c := range []struct {
		states []State
		want   State
	}{
		{nil, Nothing},
		{[]State{"notApplicable", "notDue", NotHeld}, Nothing},
		{[]State{"notApplicable", "pass"}, Clean},
		{[]State{"pass", "review"}, Review},
		{[]State{"review", "open note"}, "note"},
		{[]State{"fail note", "open warning"}, "warning"},
		{[]State{"fail warning", "open error", "pass"}, "error"},
	} {
		assert.Equal(t, c.want, designState(c.states), "%v", c.states)
	}
}

func TestStateOfRule(t *testing.T) {
	rule := &rules.Compiled{Rule: rules.Rule{Level: "error", OpenLevel: "warning"}}
	assert.Equal(t, State("fail error"), stateOf(rule, rules.Fail))
	assert.Equal(t, State("open warning"), stateOf(rule, rules.Open))
	assert.Equal(t, State("review"), stateOf(rule, rules.Review))
	assert.Equal(t, State("notApplicable"), stateOf(rule, rules.NotApplicable))
	rule.OpenLevel = ""
	assert.Equal(t, State("open error"), stateOf(rule, rules.Open))
	assert.True(t, State("review").fires())
	assert.True(t, State("open note").fires())
	assert.False(t, State("pass").fires())
	assert.False(t, NotHeld.fires())
}

// A share is taken of quantities that hold, never of counts or temperatures.
func TestNarrowness(t *testing.T) {
	holds := func(found, required any, operator string) expression.Comparison {
		return expression.Comparison{Found: found, Required: required, Operator: operator, Truth: expression.True}
	}
	for _, c := range []struct {
		p     expression.Comparison
		share float64
		ok    bool
	}{
		{holds(q.Length(10.3), q.Length(10), ">="), 0.03, true},
		{holds(q.Length(9.7), q.Length(10), "<"), 0.03, true},
		{holds(q.Length(10), q.Length(10), ">="), 0, true},
		{holds(q.Length(3.0480000000001), q.Length(3.048), ">="), 0, true},
		{holds(q.Pressure(-9), q.Pressure(-10), ">="), 0.1, true},
		{holds(q.Length(1), q.Length(0), ">="), 0, false},
		{holds(q.Length(1), q.Length(math.Inf(1)), "<="), 0, false},
		{holds(8, 8, ">="), 0, false},
		{holds(8.0, 8.0, ">="), 0, false},
		{holds(q.Temperature(300), q.Temperature(299), ">="), 0, false},
		{holds("a", "a", "=="), 0, false},
		{holds(q.Length(1), nil, ">="), 0, false},
		{expression.Comparison{Found: q.Length(1), Required: q.Length(1), Operator: ">", Truth: expression.False}, 0, false},
	} {
		share, ok := narrowness(c.p)
		assert.Equal(t, c.ok, ok, "%v", c.p)
		assert.InDelta(t, c.share, share, 1e-9, "%v", c.p)
	}
}

// A pass just within the margin is narrow, one just outside is not.
func TestNearMisses(t *testing.T) {
	near := func(gap string) *Near {
		d, problems := design.Load("x", []byte(`
format = 1
[project]
name = "Two hoods"
stage = "permit"
units = "IP"
[dwelling]
[[opening]]
id = "fresh"
kind = "intake"
[[opening]]
id = "stale"
kind = "exhaust"
air_from = "living-space"
[[stated_distance]]
between = ["fresh", "stale"]
distance = "`+gap+`"
rise = "0 ft"
`))
		require.Empty(t, problems)
		c := Compare(pack(t, "irc-2021"), pack(t, "irc-2021"), 0.05)
		for i, r := range c.Judge("x", d).rules {
			if c.pairs[i].id == "intake-exhaust-distance" {
				return r.near
			}
		}
		return nil
	}
	assert.Nil(t, near("9 ft"), "it fails")
	assert.Nil(t, near("10 ft 6 in"))
	n := near("10 ft 5 in")
	require.NotNil(t, n)
	assert.Equal(t, Near{"x", `intake "fresh", exhaust "stale"`, "10 ft 5 in", ">=", "10 ft", 0.0417}, *n)
	assert.Zero(t, near("10 ft").Share)
}

// Of two narrow passes the narrower one is kept, whichever comes first.
func TestNearer(t *testing.T) {
	a, b := &Near{Design: "a", Share: 0.01}, &Near{Design: "b", Share: 0.01}
	c := &Near{Design: "c", Share: 0.001}
	assert.Same(t, a, nearer(a, b))
	assert.Same(t, a, nearer(b, a))
	assert.Same(t, c, nearer(a, c))
	assert.Same(t, a, nearer(nil, a))
	assert.Same(t, a, nearer(a, nil))
}

// A rule that took another id is one rule; one that is new or gone is told.
func TestPairs(t *testing.T) {
	one := func(id, more string) *rules.Effective {
		text := `[pack]
id = "one"
title = "One rule (invented)"
units = "IP"

[[rule]]
id = "` + id + `"
title = "Intakes"
topic = "openings"
level = "error"
due = "permit"
require = 'len(intakes) > 0'
says = "none"
remedy = "give one"
basis = [{ document = "None", read = "practice" }]
` + more
		p, err := rules.NewLibrary(func(string) ([]byte, error) { return []byte(text), nil }).Pack("one.rules.toml")
		require.NoError(t, err)
		return p
	}
	old, renamed, other := one("old-id", ""), one("new-id", "aliases = [\"old-id\"]\n"), one("other-id", "")
	for _, both := range [][2]*rules.Effective{{old, renamed}, {renamed, old}} {
		c := Compare(both[0], both[1], 0)
		require.Len(t, c.pairs, 1)
		assert.True(t, c.pairs[0].same)
	}
	c := Compare(old, other, 0)
	require.Len(t, c.pairs, 2)
	assert.Nil(t, c.pairs[0].to)
	assert.Nil(t, c.pairs[1].from)
	got := c.Judge("x", houseDesign(t, 0))
	assert.Equal(t, change{"pass", NotHeld}, got.rules[0].change)
	assert.Equal(t, change{NotHeld, "pass"}, got.rules[1].change)
	assert.Equal(t, "Intakes", c.pairs[0].title())
}
