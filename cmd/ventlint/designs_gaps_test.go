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

// answers are the outcomes of a rule, by its subjects.
type answers map[string]rules.Outcome

func ask(rule *rules.Compiled, f *facts.Facts) answers {
	all := answers{}
	for _, j := range rule.Ask(f) {
		about := ""
		for _, s := range j.Subjects {
			about += " " + design.Label(s)
		}
		all[about] = j.Outcome
	}
	return all
}

// factsOf reads a design; nil when it is not a valid one. Lines are taken out of
// a design that was read before, so what is left is TOML.
func factsOf(source string) *facts.Facts {
	d, problems := design.LoadKnown(source)
	if len(problems) > 0 {
		return nil
	}
	return facts.Of(d)
}

// asked is a rule and what it says of the whole design.
type asked struct {
	rule   *rules.Compiled
	before answers
}

// askAll asks all rules of a design.
func askAll(t *testing.T, packs []*rules.Effective, lines []string) []asked {
	t.Helper()
	d, problems := design.Load("house.vent.toml", []byte(strings.Join(lines, "\n")))
	require.Empty(t, problems)
	f := facts.Of(d)
	var all []asked
	for _, pack := range packs {
		for _, rule := range pack.Rules {
			all = append(all, asked{rule, ask(rule, f)})
		}
	}
	require.NotEmpty(t, all)
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
// The rule that notices moves to the front: most often it notices the next line too.
func noticed(whole []asked, source string) bool {
	f := factsOf(source)
	if f == nil {
		return true
	}
	for i, a := range whole {
		if after := ask(a.rule, f); a.misses(after) {
			copy(whole[1:i+1], whole[:i])
			whole[0] = a
			return true
		}
	}
	return false
}

func (a asked) misses(after answers) bool {
	for about, before := range a.before {
		if now, still := after[about]; !still || asks(now) && !asks(before) {
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
	permit, final := askAll(t, packs, lines), askAll(t, packs, atEnd)
	excused := map[string]bool{}
	for _, g := range givenLines(lines) {
		switch {
		case excused[g.path]: // a line like it was lost without a word, as it may
		case noticed(final, without(atEnd, g.number)), noticed(permit, without(lines, g.number)):
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
		whole := slices.DeleteFunc(askAll(t, packs, lines), func(a asked) bool { return !a.wants() })
		require.NotEmpty(t, whole)
		for _, g := range givenLines(lines) {
			f := factsOf(without(lines, g.number))
			if f == nil || slices.Contains(absenceIsFact, g.path) {
				continue
			}
			for _, a := range whole {
				after := ask(a.rule, f)
				for about, before := range a.before {
					if now, still := after[about]; asks(before) && (!still || !asks(now)) {
						t.Errorf("%s: without line %d (%s): %s%s turns from %s to %q", path, g.number+1, lines[g.number], a.rule.ID, about, before, now)
					}
				}
			}
		}
	}
}

// wants tells whether the rule asks for something: else it cannot be content.
func (a asked) wants() bool {
	for _, o := range a.before {
		if asks(o) {
			return true
		}
	}
	return false
}
