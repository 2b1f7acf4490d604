package document

import (
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every construct is one that the second reader is asked about, or plain.
func TestWhatIsPlain(t *testing.T) {
	for _, plain := range []string{
		"", "# é\n", "a = 1", "a-b_1 = 'x\\'\r\n", "a = \"é\t#\"", "a = 0", "a = -12", "a = -0.50", "a = 120.0", "a = [true, false,]",
		"a = [\n1, # one\n[2],\n]", "a = { b = 1, c = [\"x\"] }", "[a]\nb = 1\n[a.b-c]\n[[d]]\n[[d]]\n[[d.e]]\n[ d . f ]",
	} {
		tree, problems := Parse("test", []byte(plain))
		require.Empty(t, problems, plain)
		require.False(t, tree.beyond, plain)
	}
	for _, other := range []string{
		byteOrderMark, "\"a\" = 1", "'a' = 1", "a.b = 1", "a = { b.c = 1 }", "[\"a\"]", "a = \"\\t\"", "a = '''x'''", `a = """x"""`,
		"a = +1", "a = 1_0", "a = 0x1", "a = 1e5", "a = 1.5e5", "a = inf", "a = nan", "a = 2026-03-31", "a = { b = 1,\n c = 2 }", "[a.b]\n[a]",
	} {
		tree, problems := Parse("test", []byte(other))
		require.Empty(t, problems, other)
		require.True(t, tree.beyond, other)
	}
}

// The second reader agrees where it is not asked: about every plain document of
// the project, which all complete designs are.
func TestTheSecondReaderAgreesAboutEveryPlainFile(t *testing.T) {
	plain := 0
	require.NoError(t, filepath.WalkDir("../..", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".toml") {
			return err
		}
		source, err := os.ReadFile(path)
		require.NoError(t, err)
		tree, problems := Parse(path, source)
		if len(problems) > 0 {
			return nil
		}
		require.Empty(t, tree.agree(), path)
		if strings.Contains(path, "designs/ok/") {
			require.False(t, tree.beyond, path)
		}
		if !tree.beyond {
			plain++
		}
		return nil
	}))
	require.Greater(t, plain, 50)
}

// The second reader agrees about plain documents of any structure.
func TestTheSecondReaderAgreesAboutGeneratedDocuments(t *testing.T) {
	plain := 0
	for seed := range uint64(5000) {
		source := generated(rand.New(rand.NewPCG(seed, 1)))
		tree, problems := Parse("test", []byte(source))
		if len(problems) > 0 {
			continue // something stands there twice
		}
		require.Empty(t, tree.agree(), source)
		if !tree.beyond {
			plain++
		}
	}
	require.Greater(t, plain, 1000)
}

// generated is a document of few names, so that tables meet again and again.
func generated(random *rand.Rand) string {
	name := func() string { return string(rune('a' + random.IntN(6))) }
	var b strings.Builder
	for range random.IntN(12) {
		switch random.IntN(4) {
		case 0:
			fmt.Fprintf(&b, "[%s]\n", name())
		case 1:
			fmt.Fprintf(&b, "[%s . %s]\n", name(), name())
		case 2:
			fmt.Fprintf(&b, "[[%s]] # %s\n", name(), name())
		case 3:
			fmt.Fprintf(&b, "[[%s.%s]]\n", name(), name())
		}
		for range random.IntN(4) {
			fmt.Fprintf(&b, "%s = %s\n", name(), generatedValue(random, 3))
		}
	}
	return b.String()
}

func generatedValue(random *rand.Rand, depth int) string {
	scalars := []string{"0", "-17", "9223372036854775807", "0.1", "-2.50", "true", "false", `""`, `"é [x] # = '"`, `'\ "'`, `"12 ft 4 in"`}
	switch random.IntN(6) {
	case 0:
		if depth > 0 {
			return fmt.Sprintf("[ %s,\n\t%s ]", generatedValue(random, depth-1), generatedValue(random, depth-1))
		}
	case 1:
		if depth > 0 {
			return fmt.Sprintf("{x = %s, y=[], z = {}}", strings.ReplaceAll(generatedValue(random, depth-1), "\n", ""))
		}
	}
	return scalars[random.IntN(len(scalars))]
}

// FuzzPlain: the second reader agrees about whatever the reader takes, also where
// it is not asked.
func FuzzPlain(f *testing.F) {
	for _, source := range corpus(f) {
		f.Add([]byte(source))
	}
	for seed := range uint64(20) {
		f.Add([]byte(generated(rand.New(rand.NewPCG(seed, 1)))))
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		if tree, problems := Parse("fuzz", source); len(problems) == 0 {
			require.Empty(t, tree.agree())
		}
	})
}

// Known packs are read as any other file, but for their samples.
func TestKnownPacksAreReadAlike(t *testing.T) {
	files, err := filepath.Glob("../../rules/packs/*.rules.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		source, err := os.ReadFile(file)
		require.NoError(t, err)
		whole, problems := Parse(file, source)
		require.Empty(t, problems)
		known, problems := ParseKnown(string(source), "[[rule.sample]]")
		require.Empty(t, problems)
		requireAlike(t, whole.Ref(), known.Ref())
	}
}

// requireAlike holds that two trees differ in nothing but samples.
func requireAlike(t *testing.T, whole, known Ref) {
	var wanted []*node
	inRule := whole.node.element && whole.tree.name(whole.tree.node(whole.node.parent)) == "rule"
	for c := range whole.tree.children(whole.node) {
		if !inRule || whole.tree.name(c) != "sample" {
			wanted = append(wanted, c)
		}
	}
	require.Equal(t, whole.Path(), known.Path())
	require.Equal(t, []any{whole.tree.value(whole.node), whole.node.key, whole.node.at}, []any{known.tree.value(known.node), known.node.key, known.node.at})
	require.Equal(t, len(wanted), known.tree.size(known.node), whole.Path())
	for c := range known.tree.children(known.node) {
		requireAlike(t, Ref{whole.tree, wanted[c.index]}, Ref{known.tree, c})
	}
}
