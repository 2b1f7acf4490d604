package expression

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// expr 1.17.8 itself stops looking into the arguments of calls once anything has
// patched its tree: "gap(nosuch, outlet)" would compile there. The types here do
// not come from expr, and these must stay mistakes whatever its next version does.
func TestNothingIsUncheckedInsideCalls(t *testing.T) {
	for text, message := range map[string]string{
		"twice(«nosuch») > 1":                                   `unknown name "nosuch"`,
		"twice(1 + «inlet.kind») > 1":                           "text cannot be added",
		"twice(«inlet.x») > 1":                                  `"inlet.x" is a length, which twice does not take: twice(number) number`,
		"gap(vents[«nosuch»], inlet) >= 1 m":                    "",
		"vents[«nosuch»].x >= 1 ft":                             "",
		"vents[0].«nosuch» >= 1 ft":                             `a vent has no key "nosuch"`,
		"min(inlet.x, «nosuch») > 1 m":                          `unknown name "nosuch"`,
		"min(inlet.x, inlet.«nosuch») > 1 m":                    `a vent has no key "nosuch"`,
		"gap(first(filter(vents, .«nosuch» > 3)), inlet) > 1 m": `a vent has no key "nosuch"`,
		"same(inlet, twice(twice(«nosuch»)))":                   `unknown name "nosuch"`,
		"table.reach(«nosuch») > 1 m":                           `unknown name "nosuch"`,
		"known(inlet.«nosuch»)":                                 `a vent has no key "nosuch"`,
		"(inlet.flow ?? «nosuch») > 1 cfm":                      `unknown name "nosuch"`,
		"inlet.x in [1 m, «nosuch»]":                            `unknown name "nosuch"`,
		"all(beside(«nosuch»), true)":                           `unknown name "nosuch"`,
		"sum(vents, twice(«nosuch»)) > 1":                       `unknown name "nosuch"`,
		"let a = twice(«nosuch»); true":                         `unknown name "nosuch"`,
		"true or twice(«nosuch») > 1":                           `unknown name "nosuch"`,
		"true ? true : twice(«nosuch») > 1":                     `unknown name "nosuch"`,
		"(true ? inlet.x : «inlet.flow») == inlet.flow":         `"inlet.x" is a length and "inlet.flow" is a flow, "?:" expected both to be the same`,
		"{'a': inlet.x}.a == inlet.flow":                        "a map in braces is not part of the language",
		"«mean(map(vents, .kind))» > 1 m":                       "mean does not take text",
		"«round(inlet.x)» > 1":                                  "round does not take a length",
	} {
		text, from, to := marked(text)
		_, err := newLanguage(t).Condition(text, ruleNames())
		var e *Error
		require.True(t, errors.As(err, &e), text)
		if message != "" {
			assert.Equal(t, message, e.Message, text)
		}
		if message != "" && to > from && message != "text cannot be added" {
			assert.Equal(t, from, e.Offset, text)
		}
	}
}
