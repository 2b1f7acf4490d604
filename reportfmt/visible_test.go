package reportfmt

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

func TestVisible(t *testing.T) {
	for in, want := range map[string]string{
		"plain, \u00e9t\u00e9 \u901a\u98a8": "plain, \u00e9t\u00e9 \u901a\u98a8",
		"\x1b[31m":                          `\x1b[31m`,
		"\x00\x7f":                          `\x00\x7f`,
		"\u009b2J":                          `\x9b2J`,
		"\xff":                              `\xff`,
		"a\u202eb":                          `a\u202eb`,
		"a\u2028b":                          `a\u2028b`,
		"\U000e0041":                        `\U000e0041`,
		"\ufeffx":                           `\ufeffx`,
		"\ufffe\U0010ffff":                  `\ufffe\U0010ffff`,
		"\ufffd":                            "\ufffd",
		"a\r\nb\tc\n":                       "a\nb\tc\n",
		"a\rb":                              `a\x0db`,
		"\u0646\u200c\u0627":                "\u0646\u200c\u0627",
	} {
		require.Equal(t, want, Visible(in), "%q", in)
	}
}

func TestOneLine(t *testing.T) {
	require.Equal(t, `a b c \x0b`, oneLine(" a\r\n\n b\tc \v"))
}

// A format may put out line feeds, and nothing else that is not seen.
func TestNoFormatPutsOutControlCharacters(t *testing.T) {
	for name, b := range batches() {
		for _, format := range Names() {
			requireHarmless(t, written(t, format, b), format+" of "+name)
		}
	}
}

// JSON could hide a character behind an escape of its own.
func TestJSONEscapesHideNoControlCharacters(t *testing.T) {
	for _, format := range []string{"json", "sarif"} {
		got := written(t, format, batches()["odd"])
		require.NotRegexp(t, `(^|[^\\])(\\\\)*\\u`, got, format)
		require.Contains(t, got, `\\x1b`, format)
	}
}

func requireHarmless(t *testing.T, s, of string) {
	t.Helper()
	require.True(t, utf8.ValidString(s), of)
	at := strings.IndexFunc(s, func(r rune) bool {
		return r > '~' && r != '\u200c' && r != '\u200d' && unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp, unicode.Noncharacter_Code_Point) ||
			r < ' ' && r != '\n'
	})
	if at >= 0 {
		r, _ := utf8.DecodeRuneInString(s[at:])
		require.Fail(t, "steers or hides", "%s has %U", of, r)
	}
}

func FuzzVisible(f *testing.F) {
	for _, s := range []string{"", "a\x1b[0m", "\xff\xfe", "\r\r\n", "\u202e", "\ufffd\x80"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := Visible(s)
		requireHarmless(t, strings.ReplaceAll(got, "\t", ""), "visible text")
		require.Equal(t, got, Visible(got))
		if !strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r > '~' }) {
			require.Equal(t, s, got)
		}
	})
}
