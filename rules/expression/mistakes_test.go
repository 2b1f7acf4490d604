package expression

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// mistakes lists expressions that do not compile. The marked part is what the
// error points at: the text between « and ».
var mistakes = []struct{ text, message, hint string }{
	// names
	{"«inlett».open", `unknown name "inlett"`, `did you mean "inlet"?`},
	{"«Vents» == 1", `unknown name "Vents"`, `did you mean "vents"?`},
	{"inlet.«flwo» > 1 cfm", `a vent has no key "flwo"`, `did you mean "flow"?`},
	{"inlet.«Flow» > 1 cfm", `a vent has no key "Flow"`, `did you mean "flow"?`},
	{"inlet.«Secret» == 'x'", `a vent has no key "Secret"`, ""},
	{"inlet.«secret» == 'x'", `a vent has no key "secret"`, ""},
	{"inlet.«Ref» == 'x'", `a vent has no key "Ref"`, ""},
	{"inlet.«placed».x > 1 m", `a vent has no key "placed"`, ""},
	{"inlet.room.«To».height > 1 m", `a room has no key "To"`, ""},
	{"vents.«flow» > 1 cfm", `"vents" is a list, which has no key "flow"`, "ask for its elements, such as all(vents, .flow ...)"},
	{"inlet.flow.«x» > 1", `"inlet.flow" is a flow, which has no key "x"`, ""},
	{"inlet.x > «limit.gapp»", `unknown limit "gapp"`, `did you mean "gap"?`},
	{"inlet.x > «limit»", `found "limit" alone, expected the name of a limit such as limit.height`, ""},
	{"inlet.x > «table.reach»", "table.reach needs its inputs, expected them in parentheses", ""},
	{"inlet.x > «table»", `found "table" alone, expected a table and its inputs such as table.length(a, b)`, ""},
	{"inlet.x > «table.raech(1 cfm)»", `unknown table "raech"`, `did you mean "reach"?`},
	{"inlet.x > «table.reach()»", "table.reach takes 1 inputs, found 0", ""},
	{"inlet.x > table.reach(«1 m»)", `"1 m" is a length, expected a flow as input 1 of table.reach`, ""},
	{"inlet.x > table.reach2(1 cfm, «1 cfm»)", `"1 cfm" is a flow, expected a plain number as input 2 of table.reach2`, ""},
	{"«gapp(inlet, outlet)» > 1 m", `unknown function "gapp"`, `did you mean "gap"?`},
	{"«gap(inlet)» > 1 m", "gap takes 2 arguments, found 1: gap(a, b) length", ""},
	{"gap(inlet, «home») > 1 m", `"home" is a home, which gap does not take: gap(a, b) length`, ""},
	{"twice(«inlet.x») > 1", `"inlet.x" is a length, which twice does not take: twice(number) number`, ""},
	{"«gap» > 1 m", `"gap" is a function, expected its arguments: gap(a, b) length`, ""},
	{"inlet.«at()» > 1 m", "a key cannot be called, expected a function such as distance(a, b)", ""},
	{"vents[0].«at()» > 1 m", "a key cannot be called, expected a function such as distance(a, b)", ""},
	{"gap(inlet, outlet)«(»1) > 1 m", `unexpected "("`, ""},
	{"let «inlet» = 1; true", `"inlet" means something already, expected another name`, ""},
	{"let «vents» = 1; true", `"vents" means something already, expected another name`, ""},
	{"let «min» = 1; true", `"min" means something already, expected another name`, ""},
	{"let a = 1; let «a» = 2; true", `"a" means something already, expected another name`, ""},
	{"let «A» = 1; true", `"A" is not a name, expected lower-case letters, digits and _, beginning with a letter`, ""},
	{"all(vents, «a») and (let a = true; a)", `unknown name "a"`, ""},
	// words
	{"inlet.kind == «'inlett'»", `"inlet.kind" cannot be "inlett"`, `did you mean "inlet"?`},
	{"«'exhaust'» != inlet.kind", `"inlet.kind" cannot be "exhaust"`, "it can be inlet, outlet, relief"},
	{"inlet.kind in ['inlet', «'exhaust'»]", `"inlet.kind" cannot be "exhaust"`, "it can be inlet, outlet, relief"},
	{"inlet.kind == («inlet.open ? 'inlet' : 'oulet'»)", `"inlet.kind" cannot be "oulet"`, `did you mean "outlet"?`},
	{"let k = 'oulet'; inlet.kind == «k»", `"inlet.kind" cannot be "oulet"`, `did you mean "outlet"?`},
	{"any(vents, .season == «'fall'»)", `".season" cannot be "fall"`, "it can be summer, winter, relief"},
	{"season_of(inlet) == «'fall'»", `"season_of(inlet)" cannot be "fall"`, "it can be summer, winter, relief"},
	{"«inlet.kind == inlet.room.fuel»", `"inlet.kind" and "inlet.room.fuel" have no word in common`, ""},
	{"«inlet.room.fuel in inlet.kinds»", `"inlet.room.fuel" and "inlet.kinds" have no word in common`, ""},
	{"«'oil'» in inlet.kinds", `"inlet.kinds" cannot be "oil"`, "it can be inlet, outlet, relief"},
	{"open_in(inlet, «'sumer'»)", `open_in does not take "sumer"`, `did you mean "summer"?`},
	{"open_in(inlet, «'fall'»)", `open_in does not take "fall"`, "it can be summer, winter, relief"},
	{"open_in(inlet, «inlet.open ? 'summer' : 'wintr'»)", `open_in does not take "wintr"`, `did you mean "winter"?`},
	{"let s = 'sumer'; open_in(inlet, «s»)", `open_in does not take "sumer"`, `did you mean "summer"?`},
	{"open_in(inlet, «inlet.kind»)", `open_in does not take "inlet"`, "it can be summer, winter, relief"},
	{"open_in(inlet, «inlet.tag»)", `"inlet.tag" can be any text, open_in expected one of a few words`, "it can be summer, winter, relief"},
	{"open_in(inlet, «5»)", `"5" is a plain number, which open_in does not take: open_in(vent, season) bool`, ""},
	// dimensions
	{"«inlet.x >= inlet.flow»", `"inlet.x" is a length and "inlet.flow" is a flow: they cannot be compared`, ""},
	{"inlet.x >= «10»", `"10" is a plain number and "inlet.x" is a length, expected a quantity such as "12 ft 4 in"`, ""},
	{"«10» <= inlet.x", `"10" is a plain number and "inlet.x" is a length, expected a quantity such as "12 ft 4 in"`, ""},
	{"inlet.x == «2 * 5»", `"2 * 5" is a plain number and "inlet.x" is a length, expected a quantity such as "12 ft 4 in"`, ""},
	{"inlet.share >= «65»", `"65" is a plain number and "inlet.share" is a ratio, expected a quantity such as "65 %"`, "65 as a ratio is 6500 %"},
	{"«1» - inlet.share >= 5 %", `"1" is a plain number and "inlet.share" is a ratio, expected a quantity such as "65 %"`, "1 as a ratio is 100 %"},
	{"inlet.share > «-limit.factor»", `"-limit.factor" is a plain number and "inlet.share" is a ratio, expected a quantity such as "65 %"`, ""},
	{"inlet.slope >= «0.02»", `"0.02" is a plain number and "inlet.slope" is a slope, expected a quantity such as "1/4 in/ft"`, ""},
	{"inlet.x + «1» > 1 m", `"1" is a plain number and "inlet.x" is a length, expected a quantity such as "12 ft 4 in"`, ""},
	{"«inlet.x + inlet.flow» > 1 m", `"inlet.x" is a length and "inlet.flow" is a flow: they cannot be added`, ""},
	{"«inlet.x * inlet.flow» > 1 m", `"inlet.x" is a length and "inlet.flow" is a flow: they cannot be multiplied`, ""},
	{"«inlet.flow / inlet.x» > 1 m", `"inlet.flow" is a flow and "inlet.x" is a length: they cannot be divided`, ""},
	{"«3 / inlet.x» > 1 m", `"3" is a plain number and "inlet.x" is a length: they cannot be divided`, ""},
	{"«inlet.warm + 20 C» > 1 C", `"inlet.warm" is a temperature and "20 C" is a temperature: they cannot be added`, ""},
	{"«-inlet.warm» > 1 C", `"inlet.warm" is a temperature, which has no negative`, ""},
	{"«abs(inlet.warm)» > 1 C", "abs does not take a temperature", ""},
	{"«inlet.sound + 3 dBA» > 50 dBA", `"inlet.sound" is a sound level and "3 dBA" is a sound level: they cannot be added`, ""},
	{"max(inlet.x, «inlet.flow») > 1 m", `"inlet.flow" is a flow, max expected a length like its other arguments`, ""},
	{"«mean(map(vents, .kind))» == 'x'", "mean does not take text", ""},
	{"«sum(vents, .kind)» == 'x'", "sum does not take text", ""},
	{"«sum(vents, .warm)» > 1 C", "sum does not take a temperature", ""},
	{"«round(inlet.x)» > 1 m", "round does not take a length", ""},
	{"«inlet.x > '10 ft'»", `"inlet.x" is a length and "'10 ft'" is text: they cannot be compared`, "quantities stand without quotes: 10 ft"},
	{"(inlet.open ? inlet.x : «inlet.flow») > 1 m", `"inlet.x" is a length and "inlet.flow" is a flow, "?:" expected both to be the same`, ""},
	{"(inlet.flow ?? «1 m») > 1 m", `"inlet.flow" is a flow and "1 m" is a length, "??" expected both to be the same`, ""},
	{"inlet.x in [1 m, «1 cfm»]", `"1 m" is a length and "1 cfm" is a flow, "list element 2" expected both to be the same`, ""},
	{"«inlet.x in [1 cfm]»", `"inlet.x" is a length and "[1 cfm]" holds a flow: it cannot be in that list`, ""},
	{"[inlet.x, «inlet.flow»][0] == inlet.flow", `"inlet.x" is a length and "inlet.flow" is a flow, "list element 2" expected both to be the same`, ""},
	// units
	{"inlet.open and«-5 F» < inlet.warm", `expected a blank before "-5 F"`, ""},
	{"inlet.open and«.5 m» < inlet.x", `expected a blank before ".5 m"`, ""},
	{"inlet.«10 ft» > 1 m", `unexpected "10 ft", expected a name`, ""},
	{"limit.«10 ft» > 1 m", `unexpected "10 ft", expected a name`, ""},
	{"table.«10 ft»(1) > 1 m", `unexpected "10 ft", expected a name`, ""},
	{"«10 ft»(1) > 1 m", `unexpected "10 ft", expected a name`, ""},
	{"let «10 ft» = 1; true", `unexpected "10 ft", expected a name`, ""},
	{"inlet.x > 10 «parsec»", `unknown unit "parsec"`, ""},
	{"inlet.flow > 10 «cfn»", `unknown unit "cfn"`, `did you mean "cfm"?`},
	{"inlet.x > 10 «ft_»", `unknown unit "ft_"`, `did you mean "ft"?`},
	{"inlet.x > «2e3 mm»", `"2e3 mm" has an exponent (write the number out), expected a quantity such as "80 cfm" or "12 ft 4 in"`, ""},
	{"inlet.x > 0«x10»", `unknown unit "x10"`, ""},
	// truth
	{"«inlet.x»", `"inlet.x" is a length, expected a condition that is true or false`, ""},
	{"«inlet.flow» and true", `"inlet.flow" is a flow, "and" expected a condition that is true or false`, ""},
	{"true or «1»", `"1" is a plain number, "or" expected a condition that is true or false`, ""},
	{"not «inlet.x» == 1 m", `"inlet.x" is a length, "not" expected a condition that is true or false`, "write not (...) around a comparison"},
	{"«inlet.x» ? true : false", `"inlet.x" is a length, "?" expected a condition that is true or false`, ""},
	{"all(vents, «.x»)", `".x" is a length, "all" expected a condition that is true or false`, ""},
	{"«inlet.kind < 'a'»", `"inlet.kind" is text: "<" expected numbers or quantities`, ""},
	{"«inlet.open > true»", `"inlet.open" is a yes or no: ">" expected numbers or quantities`, ""},
	{"«vents == vents»", `"vents" is a list: "==" expected numbers or quantities`, ""},
	{"«inlet == home»", `"inlet" is a vent and "home" is a home: they cannot be compared`, ""},
	{"inlet in «inlet»", `"inlet" is a vent, "in" expected a list such as ["a", "b"]`, ""},
	{"«inlet.x» contains 'a'", `"inlet.x" is a length, "contains" expected text`, ""},
	{"inlet.kind startsWith «1»", `"1" is a plain number, "startsWith" expected text`, ""},
	// known and ??
	{"known(«inlet.kind»)", `"inlet.kind" always has a value, known expected a key that a design may leave out`, ""},
	{"known(«3»)", `"3" always has a value, known expected a key that a design may leave out`, ""},
	{"known(«gap(inlet, outlet)»)", `"gap(inlet, outlet)" always has a value, known expected a key that a design may leave out`, ""},
	{"«known()»", "known takes one key, such as known(opening.flow)", ""},
	{"(«inlet.x» ?? 1 m) > 1 m", `"inlet.x" always has a value, "??" expected a key that a design may leave out`, ""},
	{"(inlet.flow ?? «1 cfm» ?? 2 cfm) > 1 cfm", `"1 cfm" always has a value, "??" expected a key that a design may leave out`, ""},
	{"inlet.flow ?? 1 cfm «>» 2 cfm", `"??" stands beside another operator, expected parentheses around "a ?? b"`, ""},
	// lists
	{"all(«inlet», true)", `"inlet" is a vent, all expected a list`, ""},
	{"«count(vents)» > 1", "count takes a list and a condition", "write len(list), or count(list, condition)"},
	{"«len(inlet)» > 1", "len takes one list", ""},
	{"«first()» == inlet", "first takes one list", ""},
	{"«min()» > 1", "min takes at least one argument", ""},
	{"«mean(1)» > 1", "mean takes one list of numbers or quantities", "make a list with mean(map(list, .key))"},
	{"«abs(1, 2)» > 1", "abs takes one argument, found 2", ""},
	{"«inlet[0]» == 1", `"inlet" is a vent, expected a list`, ""},
	{"«vents[inlet.number]» == inlet", "expected a key such as .id or a whole number such as [0]", ""},
	{"len(«[]») > 1", "the list is empty", ""},
	{"«#» == 1", `unexpected "#"`, ""},
	{"all(vents, «#»index > 1)", `found "#" with a name, expected it alone`, "a key of the element is #.key, or .key for short"},
	{"vents«[0:1]» == vents", "a part of a list cannot be taken, expected one element such as [0]", ""},
	// not part of the language
	{"inlet.flow == «nil»", `"nil" is not part of the language`, "ask with known(...), or give another value with ??"},
	{"inlet?.«flow» > 1 cfm", `"?." is not part of the language`, "ask with known(...), or give another value with ??"},
	{"«{'a': 1}» == 1", "a map in braces is not part of the language", ""},
	{"«true»; false", `found several expressions, expected one`, `";" stands only behind let`},
	{"1 «..» 3 == 1", `operator ".." is not part of the language`, ""},
	{"2 «**» 3 > 1", `operator "**" is not part of the language`, ""},
	{"2 «^» 3 > 1", `operator "^" is not part of the language`, ""},
	{"inlet.kind «matches» 'a'", `operator "matches" is not part of the language`, ""},
	{"«'a' + 'b'» == 'ab'", "text cannot be added", "put the parts into a message: {first} {second}"},
	{"«+1» > 0", `unexpected "+"`, ""},
	{"«$env» == 1", `unknown name "$env"`, ""},
	{"«$env».vents == 1", `unknown name "$env"`, ""},
	{"«reduce(vents, 1)» > 0", "reduce is not part of the language", ""},
	{"«find(vents, true)» == inlet", "find is not part of the language", ""},
	{"«now()» > 1", `unknown function "now"`, ""},
	{"«b'a'» == 1", `unexpected "b'a'"`, ""},
	{"1 < inlet.number «<» 3", "comparisons cannot be chained", "write a < b and b < c"},
	{"1 < inlet.number < 3 «<» 4", "comparisons cannot be chained", "write a < b and b < c"},
	{"inlet.open ?: true«»", `"?:" needs a value between its signs`, ""},
	{"inlet.open ʬ true", `unexpected "ʬ"`, ""},
	{"all(vents, .flow >«#» 0 cfm)", `found "#" with a name, expected it alone`, "a key of the element is #.key, or .key for short"},
	// syntax
	{"«»", "the expression is empty", ""},
	{"inlet.x >", "the expression ends too early", ""},
	{"(inlet.x > 1 m", "the expression ends too early", ""},
	{"inlet.x > > 1 m", `unexpected ">"`, ""},
	{"inlet.x > 10 ft «10 ft»", `unexpected "10 ft"`, ""},
	{"inlet.x «=» 10 ft", `unexpected "="`, ""},
	{"'«a»", `literal not terminated`, ""},
}

func TestMistakes(t *testing.T) {
	l := newLanguage(t)
	for _, m := range mistakes {
		t.Run(m.text, func(t *testing.T) {
			text, from, to := marked(m.text)
			_, err := l.Condition(text, ruleNames())
			var e *Error
			require.True(t, errors.As(err, &e), "%v", err)
			assert.Equal(t, m.message, e.Message)
			assert.Equal(t, m.hint, e.Hint)
			if to > from {
				assert.Equal(t, []int{from, to - from}, []int{e.Offset, e.Length}, "points at %q",
					string([]rune(text)[min(e.Offset, len([]rune(text))):min(e.Offset+e.Length, len([]rune(text)))]))
			}
			assert.GreaterOrEqual(t, e.Length, 1)
		})
	}
}

// marked takes the marks out of a text and gives where they stood, in runes.
func marked(text string) (plain string, from, to int) {
	before, rest, _ := strings.Cut(text, "«")
	inside, after, _ := strings.Cut(rest, "»")
	from = len([]rune(before))
	return before + inside + after, from, from + len([]rune(inside))
}
