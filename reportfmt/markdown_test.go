package reportfmt

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestMarkdownNumbersItemsThrough(t *testing.T) {
	got := written(t, "markdown", batches()["outcomes"])
	var numbers []string
	for _, m := range regexp.MustCompile(`(?m)^### (\d+)\. `).FindAllStringSubmatch(got, -1) {
		numbers = append(numbers, m[1])
	}
	require.Equal(t, []string{"1", "2", "3", "4", "5", "6"}, numbers)
	requireInOrder(t, got, "# Ventilation design review", "## Corrections", "## Open items", "## To be judged", "## Advisories",
		"## Notes", "## Accepted variances", "## Assumptions", "## Stated distances used", "## Counts", closing)
}

// The two notices list the same items under the same numbers.
func TestMarkdownAgreesWithText(t *testing.T) {
	for name, b := range batches() {
		var titles []string
		for _, r := range b.Reports {
			for _, g := range groupsOf(r) {
				for _, result := range g.Results {
					titles = append(titles, "### "+markdownText(oneLine(result.Rule.Title)))
				}
			}
		}
		numbered := regexp.MustCompile(`(?m)^### \d+\. (.*?)(?: \(new\))?$`).FindAllStringSubmatch(written(t, "markdown", b), -1)
		require.Len(t, numbered, len(titles), name)
		for i, m := range numbered {
			require.Equal(t, titles[i], "### "+m[1], name)
		}
	}
}

// A text of a design adds no line, and so no block, to a notice; in a line, what
// could be markup is escaped.
func TestMarkdownTextsStayTexts(t *testing.T) {
	for _, name := range []string{"odd", "hostile"} {
		got := written(t, "markdown", batches()[name])
		require.NotRegexp(t, `(?m)^(# heading|- item|1\. item|::|<script|.*[^\\]<script)`, got)
		require.NotRegexp(t, `(^|[^\\])!\[`, got)
		require.NotRegexp(t, `[^\\]\]\(https`, got)
		for _, line := range strings.Split(got, "\n") {
			if strings.HasPrefix(line, "| ") {
				bars := strings.Count(strings.ReplaceAll(line, `\|`, ""), "|")
				require.Contains(t, []int{3, 5}, bars, line)
			}
		}
	}
}

func TestMarkdownOfUncheckedDesigns(t *testing.T) {
	require.Contains(t, written(t, "markdown", batches()["nothing"]), "Nothing was checked")
	require.Contains(t, written(t, "markdown", batches()["invalid"]), "Nothing in it was checked.")
	require.Equal(t, "**No design was reviewed.**\n", written(t, "markdown", batches()["none"]))
}

func TestMarkdownTellsWhatIsNew(t *testing.T) {
	got := written(t, "markdown", batches()["baseline"])
	require.Contains(t, got, "\nCompared with the earlier review, 3 new, 1 known, 2 gone.\n")
	require.Equal(t, 3, strings.Count(got, " (new)\n"))
	requireInOrder(t, got, "## No longer found", `8 ft from exhaust "bath" (harbor-county:intake-exhaust-distance, fail)`)
}
