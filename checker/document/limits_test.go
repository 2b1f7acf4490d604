package document

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestLimits(t *testing.T) {
	nest := func(depth int) string { return "x = " + strings.Repeat("[", depth) + strings.Repeat("]", depth) }
	list := func(n int) string { return "x = [" + strings.Repeat("1,", n) + "]" }
	key := func(parts int) string { return strings.Repeat("a.", parts-1) + "a = 1" }
	for _, c := range []struct {
		name, within, beyond string
		position             Position
		message              string
	}{
		{"size", strings.Repeat("\n", MaxSize), strings.Repeat("\n", MaxSize+1), Position{1, 1, 1}, "the file has 1048577 bytes, expected at most 1048576 (1 MiB)"},
		{"depth", nest(MaxDepth), nest(MaxDepth + 1), Position{1, 37, 38}, "tables and lists stand more than 32 deep inside one another"},
		{"parts of a key", key(MaxKeyParts), key(MaxKeyParts + 1), Position{1, 33, 34}, "the key has more than 16 parts"},
		{"values", list(MaxValues - 1), list(MaxValues), Position{1, 60004, 60005}, "the file has more than 30000 values"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, problems := Parse("test", []byte(c.within))
			require.Empty(t, problems)
			tree, problems := Parse("test", []byte(c.beyond))
			require.Nil(t, tree)
			require.Equal(t, []Problem{{Position: c.position, Message: c.message}}, problems)
		})
	}
}

func TestEncodings(t *testing.T) {
	for _, c := range []struct {
		name, source string
		position     Position
		message      string
	}{
		{"UTF-16, little end first", "\xff\xfea\x00", Position{1, 1, 1}, "UTF-16"},
		{"UTF-16, big end first", "\xfe\xff\x00a", Position{1, 1, 1}, "UTF-16"},
		{"UTF-16 without a mark", "a\x00=\x00", Position{1, 1, 1}, "UTF-16"},
		{"Latin-1", "a = 'ü'\nb = 'caf\xe9'", Position{2, 9, 9}, "the byte 0xE9"},
		{"cut off", "a = '\xc3", Position{1, 6, 6}, "the byte 0xC3"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tree, problems := Parse("test", []byte(c.source))
			require.Nil(t, tree)
			require.Len(t, problems, 1)
			require.Contains(t, problems[0].Message, c.message)
			require.Equal(t, c.position, problems[0].Position)
			require.Equal(t, "save the file with the encoding UTF-8", problems[0].Hint)
		})
	}
}

func TestTooManyProblemsAreCut(t *testing.T) {
	var b strings.Builder
	for i := range MaxProblems + 5 {
		fmt.Fprintf(&b, "key_%d = 1\n", i)
	}
	tree, problems := Parse("test", []byte(b.String()))
	require.Empty(t, problems)
	problems = tree.Decode(&struct{}{})
	require.Len(t, problems, MaxProblems+1)
	require.Equal(t, Position{1001, 1, 9}, problems[MaxProblems].Position)
	require.Equal(t, "found more mistakes from here on, which are not listed", problems[MaxProblems].Message)
}
