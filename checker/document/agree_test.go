package document

import (
	"errors"
	"math"
	"slices"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"
)

// A second reader that gives anything else is noticed, wherever it is.
func TestDifferencesBetweenReadersAreNoticed(t *testing.T) {
	const source = "a = 1\nb = 'x'\nc = 2.5\nd = true\ne = [1, { f = nan }]\ng = 2026-03-31\n[[h]]\ni = 1\n"
	same := func() map[string]any {
		return map[string]any{"a": int64(1), "b": "x", "c": 2.5, "d": true, "e": []any{int64(1), map[string]any{"f": math.NaN()}},
			"g": time.Now(), "h": []map[string]any{{"i": int64(1)}}}
	}
	tree, problems := Parse("test", []byte(source))
	require.Empty(t, problems)
	require.Nil(t, tree.differs(tree.root(), same()))
	for path, change := range map[string]func(map[string]any){
		"a":      func(m map[string]any) { m["a"] = int64(2) },
		"b":      func(m map[string]any) { m["b"] = "X" },
		"c":      func(m map[string]any) { m["c"] = math.NaN() },
		"d":      func(m map[string]any) { m["d"] = "true" },
		"e":      func(m map[string]any) { m["e"] = []any{int64(1)} },
		"e[1]":   func(m map[string]any) { m["e"].([]any)[0] = 1.0 },
		"e[2].f": func(m map[string]any) { m["e"].([]any)[1].(map[string]any)["f"] = 1.0 },
		"g":      func(m map[string]any) { m["g"] = "2026-03-31" },
		"h":      func(m map[string]any) { m["h"] = "list" },
		"h[1]":   func(m map[string]any) { m["h"].([]map[string]any)[0]["j"] = 1 },
		"h[1].i": func(m map[string]any) { m["h"] = []map[string]any{{"j": int64(1)}} },
		"":       func(m map[string]any) { delete(m, "a") },
	} {
		m := same()
		change(m)
		n := tree.differs(tree.root(), m)
		require.NotNil(t, n, path)
		require.Equal(t, path, tree.path(n))
	}
}

func TestWhatTheSecondReaderRefusesIsAProblem(t *testing.T) {
	tree, _ := Parse("test", []byte(byteOrderMark+"ok = 1\n"))
	p := tree.refused(toml.ParseError{Message: "Something is wrong", Position: toml.Position{Start: 3}})
	require.Equal(t, Problem{Position: Position{1, 4, 4}, Message: "not valid TOML: something is wrong"}, p)
	p = tree.refused(toml.ParseError{Message: "Beyond", Position: toml.Position{Start: 99}})
	require.Equal(t, Position{2, 1, 1}, p.Position)
	require.Equal(t, "not valid TOML: odd", tree.refused(errors.New("odd")).Message)
}

func TestADifferenceIsReportedAtItsPlace(t *testing.T) {
	tree, _ := Parse("test", []byte("a = 1\nb = 2\n"))
	tree.child(tree.root(), "b").kind = text
	require.Equal(t, []Problem{{Position: Position{2, 5, 6}, Path: "b",
		Message: "the value cannot be read for certain, expected a plainer way to write it"}}, tree.agree())
	tree.source = "a = "
	require.Contains(t, tree.agree()[0].Message, "not valid TOML: ")
}

// A known document is read as any other, but for the tables that are not wanted,
// whatever stands in their texts.
func TestUnwantedTablesAreLeftOut(t *testing.T) {
	const kept, unwanted = "[[rule]]\nid = 'a'\n", "[[rule.sample]]\nwith = '''\n[room]\n'''\nlist = [\n  [1],\n]\nname = \"x\" # [y]\n"
	whole, problems := Parse("test", []byte(kept+unwanted+unwanted+kept+unwanted))
	require.Empty(t, problems)
	rules := slices.Collect(whole.children(whole.child(whole.root(), "rule")))
	require.Equal(t, 2, whole.size(whole.child(rules[0], "sample")))
	known, problems := ParseKnown(kept+unwanted+unwanted+kept+unwanted, "[[rule.sample]]")
	require.Empty(t, problems)
	require.Equal(t, 2, known.size(known.child(known.root(), "rule")))
	for r := range known.children(known.child(known.root(), "rule")) {
		require.Equal(t, []string{"id"}, Ref{known, r}.Keys())
		require.Equal(t, whole.child(rules[r.index], "id").at, known.child(r, "id").at)
	}
	_, problems = ParseKnown("a = ", "")
	require.Len(t, problems, 1)
}
