package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// given is one line that gives something.
type given struct {
	number int // from 0
	path   string
}

var (
	headerLine  = regexp.MustCompile(`^\[+([a-z_.]+)\]+`)
	keyLine     = regexp.MustCompile(`^([a-z0-9_]+) = `)
	arrayLine   = regexp.MustCompile(`^([a-z0-9_]+) = \[$`)
	elementLine = regexp.MustCompile(`^ +\{ .* \},$`)
)

// givenLines lists the lines of a design that can be taken away alone.
func givenLines(lines []string) []given {
	var list []given
	header, array := "", ""
	for i, line := range lines {
		switch m := keyLine.FindStringSubmatch(line); {
		case headerLine.MatchString(line):
			header = headerLine.FindStringSubmatch(line)[1] + "."
		case arrayLine.MatchString(line):
			array = m[1]
		case m != nil:
			list = append(list, given{i, header + m[1]})
		case elementLine.MatchString(line):
			list = append(list, given{i, header + array + "[]"})
		}
	}
	return list
}

// without is a design less one line.
func without(lines []string, number int) string {
	return strings.Join(slices.Concat(lines[:number], lines[number+1:]), "\n")
}

// outcomes asks all rules of a design; nil when it is not a valid one.
func outcomes(t *testing.T, packs []*rules.Effective, source string) map[string]rules.Outcome {
	t.Helper()
	d, problems := design.Load("house.vent.toml", []byte(source))
	if len(problems) > 0 {
		return nil
	}
	all := map[string]rules.Outcome{}
	f := facts.Of(d)
	for _, pack := range packs {
		for _, rule := range pack.Rules {
			for _, j := range rule.Ask(f) {
				about := rule.ID
				for _, s := range j.Subjects {
					about += " " + design.Label(s)
				}
				all[about] = j.Outcome
			}
		}
	}
	return all
}

func standardRules(t *testing.T) []*rules.Effective {
	t.Helper()
	shelf, err := loadPacks(standardPacks, nil)
	require.NoError(t, err)
	return shelf.named
}

func linesOf(t *testing.T, path string) []string {
	t.Helper()
	source, err := os.ReadFile(filepath.Join(root, path))
	require.NoError(t, err)
	return strings.Split(string(source), "\n")
}

// asks tells whether an outcome wants something of the designer.
func asks(o rules.Outcome) bool {
	return o == rules.Fail || o == rules.Open || o == rules.Review
}

// noticed tells whether a design less one line is invalid or asks for something.
func noticed(t *testing.T, packs []*rules.Effective, whole map[string]rules.Outcome, source string) bool {
	t.Helper()
	less := outcomes(t, packs, source)
	if less == nil {
		return true
	}
	for about, before := range whole {
		if after, still := less[about]; !still || asks(after) && !asks(before) {
			return true
		}
	}
	return false
}

// A line taken away from a sound design is missed at permit or, where it is due
// later, at the end.
func TestEveryLineIsMissed(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("asks all rules of the house a thousand times")
	}
	packs, lines := standardRules(t), linesOf(t, houseIP)
	atEnd := slices.Clone(lines)
	stage := slices.Index(lines, `stage = "permit"`)
	require.Positive(t, stage)
	atEnd[stage] = `stage = "final"`
	permit := outcomes(t, packs, strings.Join(lines, "\n"))
	final := outcomes(t, packs, strings.Join(atEnd, "\n"))
	require.NotEmpty(t, permit)
	require.NotEmpty(t, final)
	excused := map[string]bool{}
	for _, g := range givenLines(lines) {
		switch {
		case noticed(t, packs, permit, without(lines, g.number)), noticed(t, packs, final, without(atEnd, g.number)):
		case silent(g.path):
			excused[g.path] = true
		default:
			t.Errorf("line %d is not missed: %s: %s", g.number+1, g.path, lines[g.number])
		}
	}
	for path := range notHere {
		assert.True(t, excused[path], "%s is always missed: it needs no excuse", path)
	}
	for _, path := range slices.Concat(forPeople, standard, ofOtherPacks) {
		assert.True(t, excused[path], "%s is always missed: it needs no excuse", path)
	}
}

// absenceIsFact are keys that say something by being there.
var absenceIsFact = paths(`appliance.connected_to`)

// A line taken away from a faulty design or one with gaps never makes a rule
// content.
func TestNoLossMakesARuleContent(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("asks all rules of a house a thousand times")
	}
	packs := standardRules(t)
	for _, path := range []string{faults, withGaps} {
		lines := linesOf(t, path)
		whole := outcomes(t, packs, strings.Join(lines, "\n"))
		require.NotEmpty(t, whole)
		for _, g := range givenLines(lines) {
			less := outcomes(t, packs, without(lines, g.number))
			if less == nil || slices.Contains(absenceIsFact, g.path) {
				continue
			}
			for about, before := range whole {
				if after, still := less[about]; asks(before) && (!still || !asks(after)) {
					t.Errorf("%s: without line %d (%s): %s turns from %s to %q", path, g.number+1, lines[g.number], about, before, after)
				}
			}
		}
	}
}
