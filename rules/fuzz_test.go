package rules_test

import (
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// packSeeds are the packs of the tests, the malformed ones too, and parts of the
// shipped ones, which are small enough to be altered quickly.
func packSeeds(t testing.TB) [][]byte {
	t.Helper()
	var seeds [][]byte
	for _, pattern := range []string{"../testdata/packs/*.rules.toml", "../testdata/packs/err/*.rules.toml", "packs/*.rules.toml"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, file := range files {
			source, err := os.ReadFile(file)
			require.NoError(t, err)
			if strings.HasPrefix(pattern, "packs/") {
				seeds = append(seeds, packParts(string(source))...)
			} else {
				seeds = append(seeds, source)
			}
		}
	}
	return seeds
}

var (
	tableHeader = regexp.MustCompile(`(?m)^\[\[?(pack|limits\.\w+|table\.\w+|base\.[\w-]+|rule|change|sample)\]`)
	figureName  = regexp.MustCompile(`\b(?:limit|table)\.\w+`)
	baseName    = regexp.MustCompile(`base = "([\w-]+)"`)
)

// packParts are rules and changes of a shipped pack, each a pack of its own: the
// head, and the figures and the base designs that it names. Most load.
func packParts(source string) [][]byte {
	const samples, most = 2, 12 // of a rule; of a pack
	headers := tableHeader.FindAllStringSubmatchIndex(source, -1)
	named := map[string]string{}
	var judging []string
	for i, h := range headers {
		end := len(source)
		if i+1 < len(headers) {
			end = headers[i+1][0]
		}
		name, text := source[h[2]:h[3]], source[h[0]:end]
		if name == "rule" || name == "change" {
			pieces := strings.Split(text, "\n[["+name+".sample]]")
			judging = append(judging, strings.Join(pieces[:min(samples+1, len(pieces))], "\n[["+name+".sample]]"))
		}
		named[name] = text
	}
	var parts [][]byte
	for _, text := range judging[:min(most, len(judging))] {
		parts = append(parts, []byte(alone(named, text)))
	}
	return parts
}

// alone is a pack of one rule or change.
func alone(named map[string]string, text string) string {
	pack := named["pack"]
	wanted := map[string]bool{}
	for _, name := range figureName.FindAllString(text, -1) {
		wanted[strings.Replace(name, "limit.", "limits.", 1)] = true
	}
	for _, name := range baseName.FindAllStringSubmatch(pack+text, -1) {
		wanted["base."+name[1]] = true
	}
	for _, name := range slices.Sorted(maps.Keys(wanted)) {
		pack += named[name]
	}
	return pack + text
}

const fuzzed = "fuzz.rules.toml"

// fuzzedPack loads a pack that may extend those that ship with the program.
func fuzzedPack(source []byte) (*rules.Effective, error) {
	return rules.NewReviewLibrary(func(file string) ([]byte, error) {
		if file == fuzzed {
			return source, nil
		}
		return nil, fs.ErrNotExist
	}).Pack(fuzzed)
}

// Seeds that are refused at once would lead to little but the first checks.
func TestMostPartsOfPacksLoad(t *testing.T) {
	seeds, sound := packSeeds(t), 0
	for _, seed := range seeds {
		if _, err := fuzzedPack(seed); err == nil {
			sound++
		}
	}
	t.Logf("%d of %d seeds are packs", sound, len(seeds))
	require.Greater(t, 2*sound, len(seeds))
}

// FuzzPack: whatever a pack file holds, it gives a pack or says what is wrong with
// it, each mistake with a message and a place inside the file that it names.
func FuzzPack(f *testing.F) {
	for _, seed := range packSeeds(f) {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		pack, err := fuzzedPack(source)
		if err == nil {
			require.Equal(t, fuzzed, pack.Files[0].Name)
			return
		}
		require.Nil(t, pack)
		var invalid *rules.InvalidPack
		require.ErrorAs(t, err, &invalid)
		require.NotEmpty(t, invalid.Problems)
		require.LessOrEqual(t, len(invalid.Problems), document.MaxProblems+1)
		for _, p := range invalid.Problems {
			require.Equal(t, fuzzed, p.File)
			require.NotEmpty(t, p.Message)
			requireInside(t, source, p.Position)
		}
	})
}

// requireInside holds that a place is one of the file, or just after its last
// character.
func requireInside(t *testing.T, source []byte, at document.Position) {
	t.Helper()
	require.Positive(t, at.Line)
	require.LessOrEqual(t, at.Line, strings.Count(string(source), "\n")+1)
	require.Positive(t, at.Column)
	require.LessOrEqual(t, at.Column, at.EndColumn)
	if utf8.Valid(source) {
		width := utf8.RuneCountInString(document.Line(source, at.Line))
		require.LessOrEqual(t, at.EndColumn, width+2, "line %d", at.Line)
	}
}
