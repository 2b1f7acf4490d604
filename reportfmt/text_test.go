package reportfmt

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/fatih/color"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/rules"
)

func TestTextKeepsToItsWidth(t *testing.T) {
	for name, b := range batches() {
		for _, width := range []int{0, 48, 66, 120} {
			b.Options.Width = width
			most := width
			if width == 0 {
				most = 80
			}
			for _, line := range strings.Split(written(t, "text", b), "\n") {
				require.LessOrEqual(t, columns(line), most, "%s: %q", name, line)
				require.Equal(t, strings.TrimRight(line, " "), line, name)
			}
		}
	}
}

func TestTextIsReadableWhereTheWidthIsNot(t *testing.T) {
	b := batches()["outcomes"]
	b.Options.Width = 1
	narrow := written(t, "text", b)
	b.Options.Width = leastWidth
	require.Equal(t, written(t, "text", b), narrow)
}

func TestTextNumbersItemsThrough(t *testing.T) {
	got := written(t, "text", batches()["outcomes"])
	var numbers []string
	for _, m := range regexp.MustCompile(`(?m)^ {3}(\d+)  \S`).FindAllStringSubmatch(got, -1) {
		numbers = append(numbers, m[1])
	}
	require.Equal(t, []string{"1", "2", "3", "4", "5", "6"}, numbers)
	requireInOrder(t, got, "CORRECTIONS", "OPEN ITEMS", "TO BE JUDGED", "ADVISORIES", "NOTES",
		"ACCEPTED VARIANCES", "ASSUMPTIONS", "STATED DISTANCES USED", "COUNTS", "This review is an aid")
}

func requireInOrder(t *testing.T, s string, parts ...string) {
	t.Helper()
	for _, part := range parts {
		_, after, found := strings.Cut(s, part)
		require.True(t, found, "%q is missing or out of order", part)
		s = after
	}
}

func TestTextColoursOnlyOnDemand(t *testing.T) {
	for name, b := range batches() {
		without := written(t, "text", b)
		require.NotContains(t, without, "\x1b", name)
		b.Options.Color = true
		with := written(t, "text", b)
		require.Contains(t, with, "\x1b[", name)
		require.Equal(t, without, regexp.MustCompile("\x1b\\[[0-9;]*m").ReplaceAllString(with, ""), name)
	}
}

// The caller decides on colours; no state of the process does.
func TestTextColoursDependOnNoGlobalState(t *testing.T) {
	b := batches()["outcomes"]
	b.Options.Color = true
	want := written(t, "text", b)
	before := color.NoColor
	defer func() { color.NoColor = before }()
	t.Setenv("NO_COLOR", "1")
	for _, off := range []bool{true, false} {
		color.NoColor = off
		require.Equal(t, want, written(t, "text", b))
		require.Equal(t, off, color.NoColor)
	}
}

func TestTextNeverCallsAnUncheckedDesignGood(t *testing.T) {
	for _, b := range []Batch{batches()["nothing"], batch(report("designs/none.vent.toml"))} {
		got := written(t, "text", b)
		require.Contains(t, got, "Nothing was checked")
		require.NotContains(t, got, "Nothing to correct")
	}
}

func TestBasisSaysHowItIsKnown(t *testing.T) {
	for _, c := range []struct{ read, want string }{
		{"seen", "Code 2021, M1"},
		{"secondary", "Code 2021, M1 (read in a secondary document)"},
		{"memory", "Code 2021, M1 (from memory, check before relying on it)"},
		{"practice", "Code 2021, M1 (common practice, no published source)"},
		{"derived", "Code 2021, M1 (worked out from other figures)"},
		{"", "Code 2021, M1 (source not stated, check before relying on it)"},
	} {
		require.Equal(t, c.want, basisText(rules.Basis{Document: "Code", Edition: "2021", Section: "M1", Read: rules.Read(c.read)}))
	}
	require.Equal(t, "common practice, no published source", basisText(rules.Basis{Document: "Common practice", Read: "practice"}))
	require.Equal(t, "Code (from memory, check before relying on it); a remark",
		basisText(rules.Basis{Document: "Code", Read: "memory", Remark: "a remark"}))
}

// Every way of knowing that a pack may state has its words.
func TestEveryWayOfKnowingHasWords(t *testing.T) {
	for _, read := range rules.Read("").Values() {
		require.NotContains(t, provenance(rules.Read(read)), "not stated", read)
	}
}

func TestWrap(t *testing.T) {
	require.Equal(t, []string{""}, wrap("", 10))
	require.Equal(t, []string{"one two", "three"}, wrap("one two three", 9))
	require.Equal(t, []string{"a", "bbbbbbbbbb", "bb c"}, wrap("a bbbbbbbbbbbb c", 10))
	require.Equal(t, []string{"\u901a\u98a8\u53e3 a", "b"}, wrap("\u901a\u98a8\u53e3 a b", 8))
	require.Equal(t, 1, columns("e\u0301"))
}

func FuzzWrap(f *testing.F) {
	f.Add("one two three", 9)
	f.Add("\u901a\u98a8\u53e3 wwwwwwwwwwwwwwwwwwwwww e\u0301", 2)
	f.Fuzz(func(t *testing.T, s string, width int) {
		width = 2 + width&63
		s = oneLine(s)
		lines := wrap(s, width)
		for _, line := range lines {
			require.LessOrEqual(t, columns(line), width)
		}
		require.Equal(t, strings.ReplaceAll(s, " ", ""), strings.ReplaceAll(strings.Join(lines, ""), " ", ""))
	})
}

func TestEnumerated(t *testing.T) {
	for _, c := range []struct{ words, want string }{{"a", "a"}, {"a b", "a and b"}, {"a b c", "a, b and c"}} {
		require.Equal(t, c.want, enumerated(strings.Fields(c.words)), fmt.Sprint(c))
	}
}

// The time to break a text grows with its length, not with its square: a design
// file may be a megabyte of one word.
func TestWrapOfOneVeryLongWord(t *testing.T) {
	require.Len(t, wrap(long(1<<20), 64), 1<<14)
}
