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

// A format that needs no more than a brief review writes the same from it as from
// a full one, of every shipped house that can be read.
func TestBriefFormatsWriteTheSame(t *testing.T) {
	full, brief := bothReviews(t)
	for _, f := range formats() {
		if Brief(f) {
			require.Equal(t, written(t, f.Name(), full), written(t, f.Name(), brief), f.Name())
		} else {
			require.NotEqual(t, written(t, f.Name(), full), written(t, f.Name(), brief), "%s needs no more than a brief review", f.Name())
		}
	}
}

func bothReviews(t *testing.T) (full, brief Batch) {
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
		q := checker.Request{File: filepath.ToSlash(file), Packs: packs, Date: "2026-03-14"}
		full.Reports = append(full.Reports, checker.Review(d, q))
		q.Brief = true
		brief.Reports = append(brief.Reports, checker.Review(d, q))
	}
	require.NotEmpty(t, full.Reports)
	return full, brief
}
