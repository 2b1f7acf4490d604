package rules

import (
	"slices"
	"strings"
)

// Uncovered says which kinds of sample the rule lacks: one that passes, one
// that fails, one on the limit where there is a limit, one with an input
// missing, and one to which the rule does not apply where it has a condition. A
// rule that waits for a local pack to set its limit is shown by one that a person
// must judge.
func (c *Compiled) Uncovered() []string { return c.uncovered(c.Samples) }

func (c *Compiled) uncovered(samples []Sample) []string {
	shown := map[Expected]bool{}
	edge := false
	for _, s := range samples {
		shown[s.Expect] = true
		edge = edge || s.Edge
	}
	waits := c.waits()
	var gaps []string
	lack := func(wanted bool, what string) {
		if wanted {
			gaps = append(gaps, what)
		}
	}
	lack(!waits && !shown["pass"], "that passes")
	lack(!waits && !c.Judge && !shown["fail"], "that fails")
	lack((waits || c.Judge || c.JudgeWhen != "") && !shown["review"], "that a person must judge")
	lack(!waits && !edge && c.compares(), "on the limit")
	lack(!shown["open"], "with an input missing")
	lack(c.When != "" && !shown["notApplicable"], "to which it does not apply")
	return gaps
}

// compares tells whether the requirement compares sizes.
func (c *Compiled) compares() bool { return strings.ContainsAny(c.Require, "<>") }

// waits tells whether the requirement names a limit that is not set.
func (c *Compiled) waits() bool {
	return slices.ContainsFunc(namesIn(limitName, c.Require), func(name string) bool { return c.names.Limits[name] == nil })
}
