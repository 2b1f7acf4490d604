package document

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// FuzzParse: reading ends without a panic, every problem has a place in the
// file and says something, and what is read stands where it is said to.
func FuzzParse(f *testing.F) {
	for _, source := range corpus(f) {
		f.Add([]byte(source))
	}
	for _, c := range syntaxCases {
		f.Add([]byte(c.source))
	}
	for _, c := range conflictCases {
		f.Add([]byte(c.source))
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		tree, problems := Parse("fuzz", source)
		for _, p := range problems {
			requireInside(t, source, p)
		}
		if tree == nil {
			require.NotEmpty(t, problems)
			return
		}
		if len(problems) == 0 { // else parts of the source count for nothing
			verify(t, tree, tree.root())
		}
		for _, p := range tree.Decode(&everything{}) {
			requireInside(t, source, p)
		}
	})
}

func requireInside(t *testing.T, source []byte, p Problem) {
	require.NotEmpty(t, p.Message)
	at := p.Position
	require.LessOrEqual(t, at.Line, strings.Count(string(source), "\n")+1)
	width := len([]rune(strings.ToValidUTF8(Line(source, at.Line), "\uFFFD"))) + 1
	require.True(t, 1 <= at.Column && at.Column <= at.EndColumn, "%v", at)
	if p.Message != "the file is UTF-16 text, expected UTF-8" {
		require.LessOrEqual(t, at.EndColumn, width+1, "%v in %q", at, Line(source, at.Line))
	}
}
