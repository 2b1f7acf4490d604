package document

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// conflictCases are documents that give something twice, in every way the
// grammar has. Other readers let some of them pass, and drop the second value.
var conflictCases = []struct {
	name, source string
	line, column int
	message      string
}{
	{"key", "a = 1\na = 2", 2, 1, `key "a" is given twice, first on line 1`},
	{"key in quotes", "a = 1\n\"a\" = 2", 2, 1, `key "a" is given twice, first on line 1`},
	{"dotted key", "a.b = 1\na.b = 2", 2, 3, `key "b" is given twice, first on line 1`},
	{"value over a dotted table", "a.b = 1\na = 2", 2, 1, `key "a" is given twice, first on line 1`},
	{"value over a deeper dotted table", "a.b.c = 1\na.b = 2", 2, 3, `key "b" is given twice, first on line 1`},
	{"dotted table over a value", "a = 1\na.b = 2", 2, 1, `key "a" stands on line 1 already`},
	{"in an inline table", "t = { a = 1, a = 2 }", 1, 14, `key "a" is given twice`},
	{"inline table added to", "t = { a = 1 }\nt.b = 2", 2, 1, `key "t" stands on line 1 already`},
	{"inline table added to from inside", "t = { a = { b = 1 }, a.c = 2 }", 1, 22, `key "a" stands on line 1 already`},
	{"inline table with a header", "t = { a = 1 }\n[t]\nb = 2", 2, 1, `key "t" is given twice, first on line 1`},
	{"inline table with a deeper header", "t = { a = 1 }\n[t.u]\nb = 2", 2, 2, `key "t" stands on line 1 already`},
	{"header", "[t]\na = 1\n\n[t]\nb = 1", 4, 1, `table "t" is given twice, first on line 1`},
	{"header of a dotted table", "[f]\na.b = 1\n[f.a]\nc = 1", 3, 1, `table "a" is given twice, first on line 2`},
	{"header over a value", "t = 1\n[t]", 2, 1, `key "t" is given twice, first on line 1`},
	{"header below a value", "t = 1\n[t.u]", 2, 2, `key "t" stands on line 1 already`},
	{"value over a header", "[t.u]\n[t]\nu = 1", 3, 1, `key "u" is given twice, first on line 1`},
	{"dotted key into a table with a header", "[t.u]\n[t]\nu.v = 1", 3, 1, `key "u" stands on line 1 already`},
	{"dotted key into a list of tables", "[[t.u]]\n[t]\nu.v = 1", 3, 1, `key "u" stands on line 1 already`},
	{"table over a list of tables", "[[t]]\n[t]\na = 1", 2, 1, `table "t" is a list since line 1, expected a header in double brackets`},
	{"list of tables over a table", "[t]\n[[t]]\na = 1", 2, 1, `table "t" is one table since line 1, expected double brackets there too`},
	{"list of tables over an implied table", "[t.u]\n[[t]]\na = 1", 2, 1, `key "t" is given twice`},
	{"list of tables over a list", "t = []\n[[t]]\na = 1", 2, 1, `key "t" is given twice`},
	{"list of tables over a dotted table", "t.u = 1\n[[t]]\na = 1", 2, 1, `key "t" is given twice`},
	{"table inside a list of values", "t = [{ a = 1 }]\n[t.u]", 2, 2, `key "t" stands on line 1 already`},
	{"in the second of a list of tables", "[[t]]\na = 1\n[[t]]\na = 1\na = 2", 5, 1, `key "a" is given twice, first on line 4`},
}

func TestWhatIsGivenTwice(t *testing.T) {
	for _, c := range conflictCases {
		t.Run(c.name, func(t *testing.T) {
			tree, problems := Parse("test", []byte(c.source))
			require.NotNil(t, tree, "the rest of the document is read")
			require.Len(t, problems, 1)
			require.Contains(t, problems[0].Message, c.message)
			require.Equal(t, [2]int{c.line, c.column}, [2]int{problems[0].Position.Line, problems[0].Position.Column})
			require.NotEmpty(t, problems[0].Path)
		})
	}
}

func TestTheFirstValueCounts(t *testing.T) {
	tree, problems := Parse("test", []byte("a = 1\na = 2\na = 3\n[t]\nb = 1\n[t]\nb = 2\nc = 3\n"))
	require.Len(t, problems, 4)
	require.Equal(t, map[string]any{"a": int64(1), "t": map[string]any{"b": int64(1), "c": int64(3)}}, tree.generic(tree.root()), "what else stands in the second table is read too")
}

// What stands where something else does is read too, and called by its place.
func TestMistakesInsideWhatIsGivenTwice(t *testing.T) {
	for source, paths := range map[string][]string{
		"[t]\n[[t]]\na = 1\na = 2\n":           {"t", "t[1].a"},
		"t = 1\n[[t]]\na = 1\na = 2\n":         {"t", "t[1].a"},
		"t = 1\nt = [{ a = 1, a = 2 }]\n":      {"t", "t[1].a"},
		"t = 1\nt.u = { a = 1, a = 2 }\n":      {"t", "t.u.a"},
		"[[t]]\n[t]\nu = [[{ a = 1, a = 2 }]]": {"t", "t.u[1][1].a"},
	} {
		_, problems := Parse("test", []byte(source))
		got := []string{}
		for _, p := range problems {
			got = append(got, p.Path)
		}
		require.Equal(t, paths, got, source)
	}
}

func TestProblemsBeforeAMistakeOfGrammarAreKept(t *testing.T) {
	tree, problems := Parse("test", []byte("a = 1\na = 2\nb = \n"))
	require.Nil(t, tree)
	require.Len(t, problems, 2)
	require.Contains(t, problems[1].Message, "expected a value")
}

// A key is found again however many a table has, and whatever stands between.
func TestKeysOfTablesOfAnySizeAreTold(t *testing.T) {
	for size := few - 2; size <= few+2; size++ {
		var b strings.Builder
		for i := range size {
			fmt.Fprintf(&b, "key-%d = { x = %d, key-1 = 0 }\n", i, i)
		}
		tree, problems := Parse("test", []byte(b.String()))
		require.Empty(t, problems)
		for i := range size {
			key := fmt.Sprintf("key-%d", i)
			require.Equal(t, i+1, tree.Ref().KeyAt(key).Line)
			_, problems := Parse("test", []byte(b.String()+key+" = 1\n"))
			require.Len(t, problems, 1)
			require.Contains(t, problems[0].Message, fmt.Sprintf("first on line %d", i+1))
		}
		require.False(t, tree.Ref().Given("key"))
	}
}
