package expression

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestTemplates(t *testing.T) {
	l := newLanguage(t)
	for text, want := range map[string]string{
		"":           "",
		"plain text": "plain text",
		"{inlet.id} is {gap(inlet, outlet)} away":                 "a is 6 ft 6.74 in away",
		"needs {limit.gap}, has {10 ft}":                          "needs 10 ft, has 10 ft",
		"{{x}} {inlet.id}}}":                                      "{x} a}",
		"{'}'} {\"{\"} {`}`} {'it\\'s}'}":                         "} { } it's}",
		"{count(vents, {.x > 2 m})} of {len(vents)}":              "2 of 3",
		"{inlet.open} {inlet.kind} {home.bedrooms} {inlet.share}": "yes inlet 3 65 %",
		"{inlet.open ? 'open' : 'shut'}":                          "open",
		"{outlet.flow}":                                           `(not given: flow of vent "b")`,
		"{outlet.flow * outlet.number + outlet.power * 1 cfm/W}":  `(not given: flow of vent "b", power of vent "b")`,
		"{report.date}":                                           "(not given: report)",
		"{outlet.flow ?? 5 cfm}":                                  "5 cfm",
		"{limit.local}":                                           "(undetermined: limit.local is not set)",
		"{1 / 0}":                                                 "(undetermined: division by zero in 1 / 0)",
		"{table.reach(1 cfm)}":                                    "no limit",
		"{broken(inlet)}":                                         "(broken)",
		"größer {inlet.id} ü":                                     "größer a ü",
	} {
		made, err := l.Template(text, ruleNames())
		require.NoError(t, err, text)
		assert.Equal(t, want, made.Text(newScope(t), q.IP), text)
	}
	made, err := l.Template("{inlet.x}", ruleNames())
	require.NoError(t, err)
	assert.Equal(t, "1000 mm", made.Text(newScope(t), q.SI))
}

func TestTemplateMistakes(t *testing.T) {
	for _, m := range []struct{ text, message string }{
		{"größer als «}»", `found "}" without "{"`},
		{"größer «{»inlet.id", `found "{" without "}"`},
		{"größer {inlet.«idd»} ü", `a vent has no key "idd"`},
		{"{inlet.id} and {«»}", "the expression is empty"},
		{"{«inlet»}", `"inlet" is a vent, which cannot be printed`},
		{"a {«vents»}", `"vents" is a list, which cannot be printed`},
		{"{inlet.x > «3»}", `"3" is a plain number and "inlet.x" is a length, expected a quantity such as "12 ft 4 in"`},
		{strings.Repeat("x", 4097), "the message is longer than 4096 bytes"},
	} {
		text, from, to := marked(m.text)
		_, err := newLanguage(t).Template(text, ruleNames())
		var e *Error
		require.True(t, errors.As(err, &e), m.text)
		assert.Equal(t, m.message, e.Message, m.text)
		if to > from {
			assert.Equal(t, []int{from, to - from}, []int{e.Offset, e.Length}, m.text)
		}
	}
}

func TestTemplateWithoutFuel(t *testing.T) {
	made, err := newLanguage(t).Template("{inlet.x}", ruleNames())
	require.NoError(t, err)
	assert.Equal(t, "("+ErrSteps.Error()+")", made.Text(NewScope(newWorld(t), 0), q.SI))
}
