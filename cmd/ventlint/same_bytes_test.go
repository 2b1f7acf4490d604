package main

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/reportfmt"
)

// The same designs give the same bytes in every form, on one processor or two,
// though reviews run side by side.
func TestSameDesignsGiveTheSameBytes(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	before := filepath.Join(t.TempDir(), "before.json")
	atRoot(t, "review", "--date", "2026-01-31", "--output", "json="+before, faults)
	var first map[string]string
	for i, processors := range []int{1, 2, 2} {
		runtime.GOMAXPROCS(processors)
		got := everyForm(t, "--baseline", before, designs+"/ok", designs+"/faults", "cmd/ventlint/testdata/story")
		if i == 0 {
			first = got
		}
		for form := range first {
			require.True(t, first[form] == got[form], "%s differs on %d processors", form, processors)
		}
	}
}

// everyForm reviews once, and gives what each form's file holds.
func everyForm(t *testing.T, args ...string) map[string]string {
	t.Helper()
	folder := t.TempDir()
	args = append([]string{"review", "--date", "2026-03-31"}, args...)
	for _, form := range reportfmt.Names() {
		args = append(args, "--output", form+"="+filepath.Join(folder, form))
	}
	require.NotEmpty(t, atRoot(t, args...).stdout)
	files, err := os.ReadDir(folder)
	require.NoError(t, err)
	require.Len(t, files, len(reportfmt.Names()), "nothing but the files is left behind")
	held := map[string]string{}
	for _, file := range files {
		written, err := os.ReadFile(filepath.Join(folder, file.Name()))
		require.NoError(t, err)
		held[file.Name()] = string(written)
	}
	return held
}

func TestFilesHoldWhatStandardOutputShows(t *testing.T) {
	held := everyForm(t, earlyOne)
	for _, form := range reportfmt.Names() {
		require.Equal(t, reviewAs(t, form, earlyOne).stdout, held[form], form)
	}
}
