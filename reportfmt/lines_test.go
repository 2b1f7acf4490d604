package reportfmt

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

var lineShape = regexp.MustCompile(`^(.+):([1-9]\d*):([1-9]\d*): (error|warning|note): .+ \[([a-z-]+:[a-z0-9-]+|design|review)\]$`)

func TestLinesHaveOneShape(t *testing.T) {
	for name, b := range batches() {
		for _, l := range strings.Split(strings.TrimSuffix(written(t, "lines", b), "\n"), "\n") {
			if name == "clean" || name == "none" {
				require.Empty(t, l)
				continue
			}
			require.Regexp(t, lineShape, l, name)
		}
	}
}

func TestLinesAreOnePerProblem(t *testing.T) {
	for name, b := range batches() {
		want := 0
		for _, f := range b.Failures {
			want += len(f.Problems)
		}
		for _, r := range b.Reports {
			want += len(problems(r)) + len(r.Remarks)
		}
		if name == "nothing" {
			want = 1
		}
		require.Equal(t, want, strings.Count(written(t, "lines", b), "\n"), name)
	}
}

func TestLinesAreInTheOrderOfTheFiles(t *testing.T) {
	b := batch(report("b.vent.toml", heaterPressure(), failedSeparation()), report("a.vent.toml", advisedFlow()))
	same := failedSeparation()
	same.Rule = advisedFlow().Rule
	b.Reports[0].Results = append(b.Reports[0].Results, same)
	b.Failures = []Failure{{File: "aa.vent.toml"}}
	var got []string
	for _, l := range strings.Split(strings.TrimSpace(written(t, "lines", b)), "\n") {
		m := lineShape.FindStringSubmatch(l)
		got = append(got, strings.Join([]string{m[1], m[2], m[5]}, " "))
	}
	require.Equal(t, []string{
		"a.vent.toml 72 model-code:flows-balanced",
		"aa.vent.toml 1 design",
		"b.vent.toml 41 harbor-county:flows-balanced",
		"b.vent.toml 41 harbor-county:intake-exhaust-distance",
		"b.vent.toml 120 model-code:house-pressure",
	}, got)
}

// A line at error level blocks by default, and what blocks has such a line.
func TestErrorLinesAreWhatBlocks(t *testing.T) {
	for _, level := range []rules.Level{rules.Error, rules.Warning, rules.Note} {
		for _, outcome := range rules.Outcomes() {
			r := failedSeparation()
			r.Outcome, r.Level = outcome, level
			got := written(t, "lines", batch(report("a.vent.toml", r, quiet(rules.Pass))))
			require.Equal(t, r.Blocks(rules.Error), strings.Contains(got, ": error: "), "%s at %s", outcome, level)
		}
	}
}

func TestProblemText(t *testing.T) {
	open := openAccess()
	open.Missing = nil
	require.Equal(t, "open, needs an input that the design does not give: Level working space before the ventilator", problemText(&open))
	flow := advisedFlow()
	require.Equal(t, "supply and extract differ by 14 cfm; found 14 cfm, required at most 8 cfm, over by 6 cfm", problemText(&flow))
}

func TestComparisonsInWords(t *testing.T) {
	for _, c := range []struct{ operator, required, wanting string }{
		{">=", "at least 5", "short by"}, {">", "more than 5", "short by"},
		{"<=", "at most 5", "over by"}, {"<", "less than 5", "over by"},
		{"==", "exactly 5", "off by"}, {"!=", "other than 5", "off by"},
		{"in", "one of 5", "off by"}, {"~", "~ 5", "off by"},
	} {
		got := demand(checker.Comparison{Operator: c.operator, Found: "3", Required: "5", Difference: "2"})
		require.Equal(t, "found 3, required "+c.required+", "+c.wanting+" 2", got)
	}
	require.Equal(t, `for duct "a" found 3, required at least 5`,
		demand(checker.Comparison{Operator: ">=", Found: "3", Required: "5", Of: `duct "a"`}))
}
