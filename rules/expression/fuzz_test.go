package expression

import (
	"errors"
	"math/rand"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// checkAnything compiles any text in every role. What does not compile says so
// with a place inside the text; what compiles runs without an error of types,
// and both ways of evaluation agree.
func checkAnything(t testing.TB, text string) (compiles bool) {
	t.Helper()
	l, n := newLanguage(t), ruleNames()
	if made, err := l.Template("x {"+text+"}", n); checkMistake(t, "x {"+text+"}", err) {
		made.Text(newScope(t), q.IP)
	}
	if list, err := l.List(text, n); checkMistake(t, text, err) {
		_, err := list.Items(newScope(t))
		require.True(t, err == nil || allowedError(err), "%s: %v", text, err)
	}
	c, err := l.Condition(text, n)
	if !checkMistake(t, text, err) {
		return false
	}
	s := newScope(t)
	settled, err := c.settled()
	require.NoError(t, err, text)
	out, failed := byMachine(t, settled, s)
	require.True(t, failed == nil || allowedError(failed) || strings.Contains(failed.Error(), "memory budget") || strings.Contains(text, "crash"), "%s: %v", text, failed)
	e, err := c.Explain(s)
	if err != nil {
		require.True(t, errors.Is(err, ErrSteps) || errors.Is(err, errBroken) || strings.Contains(text, "crash"), "%s: %v", text, err)
		return true
	}
	if failed == nil {
		require.Equal(t, truthOf(out.(bool)), e.Truth, text)
	}
	truth, err := c.Truth(s)
	require.NoError(t, err, "what can be explained can be evaluated: %s", text)
	require.Equal(t, e.Truth, truth, text)
	return true
}

func checkMistake(t testing.TB, text string, err error) (compiles bool) {
	t.Helper()
	if err == nil {
		return true
	}
	var mistake *Error
	require.True(t, errors.As(err, &mistake), text)
	require.NotContains(t, mistake.Message, "the expression cannot", text)
	require.NotContains(t, mistake.Message, string(standIn)+"_", text)
	require.GreaterOrEqual(t, mistake.Offset, 0, text)
	require.GreaterOrEqual(t, mistake.Length, 1, text)
	require.LessOrEqual(t, mistake.Offset, max(utf8.RuneCountInString(text), 0), text)
	return false
}

// scraps are what mutations are made of.
var scraps = []string{"inlet", "outlet", "vents", ".flow", ".x", ".kind", ".id", ".size", ".width", ".number", ".open", ".room", ".warm", ".share", ".curve",
	"(", ")", "[", "]", "{", "}", " and ", " or ", "not ", "!", "-", "+", "*", "/", " >= ", " < ", " == ", " != ", "??", "?", ":", ",", "1", "2.5", "10 ft", "5 cfm",
	"36 in", " in ", "-5 F", "65 %", "1/4 in/ft", "R-8", "'inlet'", "'x'", "nil", "true", "false", "all(vents, ", "any(vents, ", "none(vents, ", "one(vents, ",
	"filter(vents, ", "map(vents, ", "count(vents, ", "sum(vents, ", "len(", "max(", "min(", "abs(", "first(", "mean(", "round(", "known(", "gap(", "#", ".",
	"let a = ", ";", "a", "|", "..", "?.", "1e9", "matches", "contains ", "limit.", "limit.gap", "limit.local", "table.reach(", "report", ".date", "home.", "'", "\"", "//", "/*"}

var tokens = regexp.MustCompile(`[0-9.]+ ?[a-zA-Z%/0-9]*|[.#]?[a-z_]+|'[^']*'|[<>=!]+|[^ ]`)

// mutant changes a text here and there: some tokens into tokens of another text,
// or any place into anything.
func mutant(r *rand.Rand, text, other string) string {
	if r.Intn(3) > 0 {
		donors := tokens.FindAllString(other, -1)
		chosen := r.Intn(len(tokens.FindAllString(text, -1)))
		return tokens.ReplaceAllStringFunc(text, func(token string) string {
			if chosen--; chosen == -1 || r.Intn(20) == 0 {
				return donors[r.Intn(len(donors))]
			}
			return token
		})
	}
	for range 1 + r.Intn(3) {
		from := r.Intn(len(text) + 1)
		to := from
		if r.Intn(2) == 0 {
			to = min(len(text), from+r.Intn(8))
		}
		text = text[:from] + scraps[r.Intn(len(scraps))] + text[to:]
	}
	return text
}

func seeds() []string {
	list := []string{"(inlet.size.width ?? 4 mm) > 3 mm", "sum(filter(vents, known(.flow)), .flow) < 3 cfm", "max(inlet.x, outlet.x) - 2 * (3 ft) > -1 m",
		"inlet.flow / (inlet.x * outlet.x) < 500 fpm", "count(vents, .number + 1 > 2) >= 1 ? true : false", "home.bedrooms * 7.5 cfm + home.area * 0.03 cfm/ft2 <= inlet.flow"}
	return append(list, sortedKeys(truths)...)
}

// Type errors while evaluating, and panics of the compiler, came to light by
// mutation where expr's own type checking was relied upon.
func TestMutants(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	from, compiled := seeds(), 0
	for range 20_000 {
		if checkAnything(t, mutant(r, from[r.Intn(len(from))], from[r.Intn(len(from))])) {
			compiled++
		}
	}
	require.Greater(t, compiled, 500)
}

func FuzzAnything(f *testing.F) {
	for _, text := range seeds() {
		f.Add(text)
	}
	for _, m := range mistakes {
		text, _, _ := marked(m.text)
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) { checkAnything(t, text) })
}

func FuzzAgreement(f *testing.F) {
	for seed := range int64(20) {
		f.Add(seed, uint8(3))
	}
	f.Fuzz(func(t *testing.T, seed int64, depth uint8) {
		text := (&generator{rand: rand.New(rand.NewSource(seed)), asking: true}).condition(int(depth % 5))
		if len(text(false)) > maxSource || len(text(true)) > maxSource {
			return
		}
		c, err := newLanguage(t).Condition(text(false), ruleNames())
		if err != nil {
			require.ErrorContains(t, err, "parts", text(false))
			return
		}
		s := newScope(t)
		if _, err := c.Truth(s); errors.Is(err, ErrSteps) {
			return
		}
		require.Equal(t, both(t, text(false), newScope(t)), both(t, text(true), newScope(t)), text(false))
	})
}
