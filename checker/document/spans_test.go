package document

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"
)

// corpus gives documents of every construct of the grammar, by file name.
func corpus(t testing.TB) map[string]string {
	files, err := filepath.Glob("testdata/valid/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	documents := map[string]string{}
	for _, f := range files {
		source, err := os.ReadFile(f)
		require.NoError(t, err)
		documents[filepath.Base(f)] = string(source)
	}
	return documents
}

// In three variants of every document the text at the place of each key and
// value reads, by another reader, as that key and value.
func TestEveryKeyAndValueStandsWhereItIsSaidTo(t *testing.T) {
	for name, source := range corpus(t) {
		unix := strings.TrimPrefix(strings.ReplaceAll(source, "\r\n", "\n"), byteOrderMark)
		for variant, text := range map[string]string{
			"as it is": source, "unix": unix, "mark": byteOrderMark + unix, "crlf": strings.ReplaceAll(unix, "\n", "\r\n"),
		} {
			t.Run(name+", "+variant, func(t *testing.T) {
				tree, problems := Parse(name, []byte(text))
				require.Empty(t, problems)
				verify(t, tree, tree.root())
			})
		}
	}
}

// Characters of long lines are counted as those of short ones, whoever asks first.
func TestPlacesInLongLines(t *testing.T) {
	for _, value := range []string{`"é", `, `"xy", `, `"` + strings.Repeat("ü", 600) + `", `} {
		tree, problems := Parse("test", []byte("# é\nx = ["+strings.Repeat(value, 300)+"]\ny = 1\n"))
		require.Empty(t, problems)
		done := make(chan Position)
		for range 4 {
			go func() { done <- tree.lines.position(tree.child(tree.root(), "y").at) }()
		}
		for range 4 {
			require.Equal(t, Position{3, 5, 6}, <-done)
		}
		for c := range tree.children(tree.child(tree.root(), "x")) {
			verifyPosition(t, tree, c.at)
		}
	}
}

// verify looks at the spans of a node and of all below it.
func verify(t testing.TB, tree *Tree, n *node) {
	if n.depth > 0 {
		verifyKey(t, tree, n)
		verifyValue(t, tree, n)
		verifyPosition(t, tree, n.at)
	}
	for c := range tree.children(n) {
		verify(t, tree, c)
	}
}

func verifyKey(t testing.TB, tree *Tree, n *node) {
	if n.element {
		return
	}
	var one map[string]any
	key := string(tree.source[n.key.start:n.key.end])
	_, err := toml.Decode(key+" = 1", &one)
	require.NoError(t, err, "key %q", key)
	require.Contains(t, one, tree.name(n))
	verifyPosition(t, tree, n.key)
}

func verifyValue(t testing.TB, tree *Tree, n *node) {
	value := string(tree.source[n.at.start:n.at.end])
	switch {
	case n.origin == headed || n.origin == repeated:
		require.True(t, strings.HasPrefix(value, "[") && strings.HasSuffix(value, "]"), "header %q", value)
		return
	case n.origin != closed:
		require.Equal(t, n.key, n.at)
		return
	}
	var one map[string]any
	_, err := toml.Decode("x = "+value+"\n", &one)
	require.NoError(t, err, "value %q", value)
	require.Nil(t, tree.differs(n, one["x"]), "value %q", value)
}

// verifyPosition counts lines and characters in the plainest way.
func verifyPosition(t testing.TB, tree *Tree, s span) {
	before := strings.TrimPrefix(string(tree.source[:s.start]), byteOrderMark)
	lines := strings.Split(before, "\n")
	line, _, _ := strings.Cut(string(tree.source[s.start:s.end]), "\n")
	column := len([]rune(lines[len(lines)-1])) + 1
	width := len([]rune(strings.TrimSuffix(line, "\r")))
	require.Equal(t, Position{len(lines), column, column + width}, tree.lines.position(s))
}
