package reportfmt

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
)

// A format writes the same from a review of the depth that it needs as from the deepest,
// of every shipped house that can be read, and not so from a shallower one.
func TestFormatsNeedTheirDepth(t *testing.T) {
	var reviews [checker.Problems + 1]Batch
	for depth := range reviews {
		reviews[depth] = reviewsOf(t, checker.Depth(depth))
	}
	for _, f := range formats() {
		needs := Depth(f)
		whole := written(t, f.Name(), reviews[checker.Evidence])
		require.Equal(t, whole, written(t, f.Name(), reviews[needs]), f.Name())
		if needs < checker.Problems {
			require.NotEqual(t, whole, written(t, f.Name(), reviews[needs+1]), "%s needs no such depth", f.Name())
		}
	}
}

func reviewsOf(t *testing.T, depth checker.Depth) (all Batch) {
	t.Helper()
	library := rules.NewReviewLibrary(nil)
	var packs []*rules.Effective
	for _, id := range []string{"irc-2021", "practice"} {
		pack, err := library.Pack(id)
		require.NoError(t, err)
		packs = append(packs, pack)
	}
	files, err := filepath.Glob("../testdata/designs/*/*.vent.toml")
	require.NoError(t, err)
	for _, file := range files {
		source, err := os.ReadFile(file)
		require.NoError(t, err)
		d, problems := design.Load(file, source)
		if len(problems) > 0 {
			continue
		}
		all.Reports = append(all.Reports, checker.Review(d, checker.Request{File: filepath.ToSlash(file), Packs: packs, Date: "2026-03-14", Depth: depth}))
	}
	require.NotEmpty(t, all.Reports)
	return all
}
