package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// reviewText reviews a design that stands in no file yet.
func reviewText(t *testing.T, source string) ran {
	t.Helper()
	path := filepath.Join(t.TempDir(), "house"+designSuffix)
	require.NoError(t, os.WriteFile(path, []byte(source), 0o644))
	return reviewAs(t, "lines", path)
}

func TestStarterReviewsClean(t *testing.T) {
	printed := atRoot(t, "starter")
	require.Equal(t, clean, printed.code)
	assert.Equal(t, ran{code: clean}, reviewText(t, printed.stdout))
	for i, line := range strings.Split(printed.stdout, "\n") {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), 80, "line %d", i+1)
	}
}

// Whoever takes the "#" away must get a design that is read. Its variance accepts
// nothing, because nothing is wrong, and a review says so.
func TestStarterTeachesWhatIsRead(t *testing.T) {
	offered := regexp.MustCompile(`(?m)^# ([a-z0-9_]+ = |\[)`)
	require.Greater(t, len(offered.FindAllString(string(starter), -1)), 100)
	whole := offered.ReplaceAllString(string(starter), "$1")
	got := reviewText(t, whole)
	assert.Equal(t, clean, got.code, got.stdout+got.stderr)
	assert.NotRegexp(t, `: (error|warning): `, got.stdout)
}

func TestStarterShowsEverySection(t *testing.T) {
	for _, section := range strings.Fields(`[project] [dwelling] [dwelling.leakage] [[room]] [room.local_exhaust]
		[[ventilator]] [[ventilator.filter]] [ventilator.access] [[terminal]] [[wall]] [[opening]] [[source]]
		[[building_opening]] [[line]] [[stated_distance]] [[duct]] [[appliance]] [commissioning] [[variance]]`) {
		assert.Contains(t, string(starter), section)
	}
}
