package document

import (
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"
)

// syntaxCases are documents with one mistake of grammar, its place, and a part
// of its message.
var syntaxCases = []struct {
	name, source string
	line, column int
	message      string
}{
	{"no value", "a = \nb = 1", 1, 5, "found the end of the line, expected a value"},
	{"no value at the end", "a =", 1, 4, "found the end of the file, expected a value"},
	{"no key", "= 1", 1, 1, `found "=", expected a key`},
	{"no equals sign", "a 1", 1, 3, `found "1" after the key, expected "="`},
	{"key alone", "a", 1, 2, `found the end of the file after the key, expected "="`},
	{"dot at the end of a key", "a. = 1", 1, 4, `found "=", expected a key`},
	{"dot at the start of a key", ".a = 1", 1, 1, `found ".", expected a key`},
	{"letter outside the key alphabet", "größe = 1", 1, 3, `found "ö" after the key`},
	{"key that begins outside the alphabet", "ö = 1", 1, 1, `found "ö", expected a key`},
	{"key in three quotes", `"""a""" = 1`, 1, 1, "expected a key on one line"},
	{"key over two lines", "\"a\nb\" = 1", 1, 1, "no closing quote"},
	{"two values on a line", "a = 1 b = 2", 1, 5, "found 1 b = 2, expected"},
	{"text after text", `a = "b" c`, 1, 9, `found "c", expected the end of the line`},
	{"quote in text", `a = "12' 4""`, 1, 12, `found a quote ("), expected the end of the line`},
	{"text after a header", "[a] b = 1", 1, 5, `found "b", expected the end of the line`},
	{"comma after a value", "a = 1,", 1, 6, `found ",", expected the end of the line`},
	{"text without a closing quote", "x = 1\nö = \"", 2, 1, `found "ö"`},
	{"text not closed on its line", "a = \"b\nc = 1", 1, 5, "no closing quote on its line"},
	{"literal not closed", "a = 'b", 1, 5, "no closing quote on its line"},
	{"long text not closed", "a = \"\"\"\nb\n", 1, 5, `not closed, expected """`},
	{"long literal not closed", "\na = '''b''", 2, 5, "not closed, expected '''"},
	{"six quotes at the end", `a = """b""""""`, 1, 14, "found a quote"},
	{"unknown escape", `a = "\q"`, 1, 6, `unknown escape \q`},
	{"backslash before blanks", `a = """b\ c"""`, 1, 9, `unknown escape \`},
	{"escape of no character", `a = "\uD800"`, 1, 6, `found \uD800, expected \u and the 4 digits`},
	{"escape too short", `a = "\u12"`, 1, 6, `found \u12, expected`},
	{"escape beyond the last character", `a = "\U00110000"`, 1, 6, `the 8 digits`},
	{"escape at the end", `a = "\`, 1, 6, "unknown escape"},
	{"control character in text", "a = \"\x01\"", 1, 6, "U+0001"},
	{"delete in a comment", "# \x7f", 1, 3, "U+007F"},
	{"lone carriage return", "a = 1 # x\ry", 1, 10, "U+000D"},
	{"carriage return in text", "a = \"x\ry\"", 1, 7, "U+000D"},
	{"unquoted text", "a = intake", 1, 5, "found intake, expected text in quotes"},
	{"capital truth", "a = True", 1, 5, "found True"},
	{"leading zero", "a = 007", 1, 5, "found 007, expected a number"},
	{"point without digits", "a = 1.", 1, 5, "found 1., expected a number"},
	{"point without a whole part", "a = .5", 1, 5, "found .5, expected a number"},
	{"double separator", "a = 1__0", 1, 5, "expected a number"},
	{"sign before hexadecimal", "a = +0x1F", 1, 5, "expected text in quotes, a number"},
	{"too large", "a = 9223372036854775808", 1, 5, "expected a number of 64 bits"},
	{"too large with an exponent", "a = 1e400", 1, 5, "expected a number of 64 bits"},
	{"two signs", "a = +-nan", 1, 5, "found +-nan"},
	{"thirtieth of February", "a = 2026-02-30", 1, 5, "found 2026-02-30, which is not on the calendar"},
	{"offset beyond an hour", "a = 2026-02-03T10:00:00+12:60", 1, 5, "expected text in quotes"},
	{"list not closed", "a = [1,\n2\n", 1, 5, `the list that begins here is not closed, expected "]"`},
	{"list not closed after a comma", "a = [1,", 1, 5, `the list that begins here is not closed`},
	{"list without a comma", "a = [\n1\n\"b\"]", 3, 1, `found a quote (") in a list, expected a comma or "]"`},
	{"comma alone in a list", "a = [,]", 1, 6, `found ",", expected a value`},
	{"bracket of the other kind", "a = [}", 1, 6, `found "}", expected a value`},
	{"table not closed", "a = { b = 1", 1, 5, `the table that begins here is not closed, expected "}"`},
	{"table not closed after a comma", "a = { b = 1,\n", 1, 5, `the table that begins here is not closed`},
	{"table without a comma", "a = { b = 'x' c = 2 }", 1, 15, `found "c" in a table, expected a comma or "}"`},
	{"header not closed", "[a", 1, 3, `found the end of the file in a table header, expected "]"`},
	{"header without a name", "[]", 1, 2, `found "]", expected a key`},
	{"blank inside double brackets", "[ [a] ]", 1, 3, `found "[", expected a key`},
	{"double header closed once", "[[a]", 1, 4, `found "]" in a table header, expected "]]"`},
}

// Every mistake is found at its place, and by another reader as well: none is a
// whim of ours.
func TestMistakesOfGrammar(t *testing.T) {
	for _, c := range syntaxCases {
		t.Run(c.name, func(t *testing.T) {
			tree, problems := Parse("test", []byte(c.source))
			require.Nil(t, tree)
			require.Len(t, problems, 1)
			require.Contains(t, problems[0].Message, c.message)
			require.Equal(t, [2]int{c.line, c.column}, [2]int{problems[0].Position.Line, problems[0].Position.Column}, problems[0].Message)
			require.Empty(t, problems[0].Path)
			if c.name != "offset beyond an hour" { // which the other reader lets pass
				_, err := toml.Decode(c.source, new(map[string]any))
				require.Error(t, err)
			}
		})
	}
}

func TestHintsForValuesWithoutQuotes(t *testing.T) {
	for source, hint := range map[string]string{
		"a = 12 ft 4 in # x":                 `write "12 ft 4 in"`,
		"a = yes":                            "write true",
		"a = FALSE":                          "write false",
		"a = [1, two]":                       `write "two"`,
		"a = it's":                           "",
		"a = " + strings.Repeat("long ", 20): "",
	} {
		_, problems := Parse("test", []byte(source))
		require.Len(t, problems, 1, source)
		require.Equal(t, hint, problems[0].Hint, source)
	}
}

func TestLongValuesAreCutInMessages(t *testing.T) {
	_, problems := Parse("test", []byte("a = "+strings.Repeat("x", 100)))
	require.Equal(t, "found "+strings.Repeat("x", 40)+"..., expected text in quotes, a number, true or false", problems[0].Message)
}
