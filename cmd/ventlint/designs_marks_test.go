package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	faultMark = regexp.MustCompile(`# fault: (.+)$`)
	lineForm  = regexp.MustCompile(`^(\S+):(\d+):(\d+): (error|warning|note): .* \[[^ :]+:([^ :]+)\]$`)
)

// marks lists "line rule" for each rule that a comment of the design names.
func marks(t *testing.T, lines []string) []string {
	t.Helper()
	var list []string
	for i, line := range lines {
		if m := faultMark.FindStringSubmatch(line); m != nil {
			for _, rule := range strings.Split(m[1], ", ") {
				list = append(list, fmt.Sprintf("%d %s", i+1, rule))
			}
		}
	}
	require.NotEmpty(t, list)
	slices.Sort(list)
	return list
}

// valueColumn is where the value of a line "key = value" begins.
func valueColumn(line string) string {
	return fmt.Sprint(strings.Index(line, "= ") + len("= ") + 1)
}

func TestFaultsAreFoundWhereTheyAre(t *testing.T) {
	report := reviewAs(t, "lines", designs+"/faults")
	require.Equal(t, found, report.code)
	source, err := os.ReadFile(faults)
	require.NoError(t, err)
	lines := strings.Split(string(source), "\n")
	var got []string
	for _, line := range strings.Split(strings.TrimSuffix(report.stdout, "\n"), "\n") {
		m := lineForm.FindStringSubmatch(line)
		require.NotNil(t, m, line)
		assert.Equal(t, faults, m[1])
		if m[4] == "note" {
			continue
		}
		got = append(got, m[2]+" "+m[5])
		var n int
		_, err := fmt.Sscan(m[2], &n)
		require.NoError(t, err)
		assert.Equal(t, valueColumn(lines[n-1]), m[3], "column of line %d: %s", n, lines[n-1])
	}
	slices.Sort(got)
	assert.Equal(t, marks(t, lines), got)
}

func TestFaultsAreOfAllFamilies(t *testing.T) {
	families := map[string]int{}
	for _, r := range results(t, reviewAs(t, "json", faults).stdout) {
		if r.Outcome == "fail" && r.Level == "error" {
			families[r.Topic]++
		}
	}
	for _, topic := range []string{"rates", "openings", "access", "ducts"} {
		assert.Positive(t, families[topic], topic)
	}
}

func TestUnitsChangeNothing(t *testing.T) {
	var sides [2][]string
	for i, path := range []string{houseIP, houseSI} {
		t.Run(path, func(t *testing.T) {
			for _, r := range results(t, reviewAs(t, "json", path).stdout) {
				sides[i] = append(sides[i], r.about()+": "+r.Outcome)
			}
		})
	}
	assert.Equal(t, sides[0], sides[1])
}

// A house in SI must not be the same file again.
func TestTheHouseInSIHasNoOldUnits(t *testing.T) {
	source, err := os.ReadFile(filepath.Join(root, houseSI))
	require.NoError(t, err)
	old := regexp.MustCompile(`"[^"]*[0-9] (ft|in|ft2|in2|ft3|cfm|inwc|psi|F|Btu/h|in/ft)"|"R-`)
	assert.Empty(t, old.FindAllString(string(source), -1))
	assert.Regexp(t, `(?m)^units = "SI"$`, string(source))
}
