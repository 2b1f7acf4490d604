package document

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestPlacesInsideATextOfOneLine(t *testing.T) {
	r := parsed(t, byteOrderMark+"a = 1\nb = 'é > 10 ft' # x\n")
	text, ok := r.Text("b")
	require.True(t, ok)
	require.Equal(t, "é > 10 ft", text.Value)
	require.Equal(t, Position{2, 6, 7}, text.Position(0))
	require.Equal(t, Position{2, 10, 11}, text.Position(4))
	require.Equal(t, Position{2, 10, 15}, text.Span(4, 5))
	require.Equal(t, Position{2, 15, 16}, text.Position(9), "one past the last is the closing quote")
	require.Equal(t, Position{2, 15, 16}, text.Position(99))
	require.Equal(t, Position{2, 6, 7}, text.Position(-3))
	require.Equal(t, Position{2, 13, 15}, text.Span(7, 99))
}

func TestOnlyTextsHavePlacesInside(t *testing.T) {
	r := parsed(t, "a = 1\nb = ['x']\n")
	for _, key := range []string{"a", "b", "c"} {
		_, ok := r.Text(key)
		require.False(t, ok, key)
	}
	require.Zero(t, Text{}.Position(3))
}

// where says which position each character of a text has.
func where(t *testing.T, source string) (value string, at [][2]int) {
	text, ok := parsed(t, source).Text("x")
	require.True(t, ok)
	for i := range []rune(text.Value) {
		p := text.Position(i)
		at = append(at, [2]int{p.Line, p.Column})
	}
	return text.Value, at
}

func TestPlacesInsideTextsOfSeveralLinesAndWithEscapes(t *testing.T) {
	for _, c := range []struct {
		name, source, value string
		at                  [][2]int
	}{
		{"literal over lines", "x = '''\na\n  b\n'''", "a\n  b\n", [][2]int{{2, 1}, {2, 2}, {3, 1}, {3, 2}, {3, 3}, {3, 4}}},
		{"literal over lines, CRLF", "x = '''\r\na\r\nb'''", "a\nb", [][2]int{{2, 1}, {2, 2}, {3, 1}}},
		{"basic over lines", "x = \"\"\"a\nb\"\"\"", "a\nb", [][2]int{{1, 8}, {1, 9}, {2, 1}}},
		{"escapes", `x = "a\t\u00e9b"`, "a\téb", [][2]int{{1, 6}, {1, 7}, {1, 9}, {1, 15}}},
		{"continued lines", "x = \"\"\"a\\\n\n   b\\\tc\"\"\"", "", nil},
		{"continued", "x = \"\"\"a\\  \n\n   b\"\"\"", "ab", [][2]int{{1, 8}, {3, 4}}},
		{"quotes at the end", `x = """a"""""`, `a""`, [][2]int{{1, 8}, {1, 9}, {1, 10}}},
		{"empty", `x = ""`, "", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.value == "" && c.name != "empty" {
				_, problems := Parse("test", []byte(c.source))
				require.Len(t, problems, 1, "a backslash before a blank is no escape")
				return
			}
			value, at := where(t, c.source)
			require.Equal(t, c.value, value)
			require.Equal(t, c.at, at)
		})
	}
}

// The characters of every text of the corpus are where they are said to be: a
// plain one is found there.
func TestEveryCharacterOfATextStandsWhereItIsSaidTo(t *testing.T) {
	seen := 0
	for name, source := range corpus(t) {
		tree, problems := Parse(name, []byte(source))
		require.Empty(t, problems)
		for c := range tree.children(tree.root()) {
			text, ok := tree.Ref().Text(tree.name(c))
			if !ok {
				continue
			}
			require.Equal(t, tree.value(c), text.Value)
			at := text.places()
			require.Len(t, at, len([]rune(text.Value))+1)
			for i, r := range []rune(text.Value) {
				if rest := source[at[i]:]; rest[0] != '\\' && r != '\n' {
					require.Equal(t, r, []rune(rest)[0])
					seen++
				}
			}
		}
	}
	require.Greater(t, seen, 100)
}
