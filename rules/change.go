package rules

import (
	"fmt"
	"maps"
	"slices"
)

// applyChanges lays the [[change]] tables of a pack over the rules of its
// parents.
func (e *Effective) applyChanges(pack *Pack, report *mistakes) {
	changed := map[string]*Change{} // the first change of a rule
	for _, c := range pack.Changes {
		id := c.Rule
		r := e.Rule(id)
		if r != nil {
			id = r.ID
		}
		first, twice := changed[id]
		changed[id] = c
		switch {
		case twice:
			report.add(c.At("rule"), c.KeyPath("rule"), fmt.Sprintf("rule %q is changed twice, first on line %d", id, first.At("rule").Line), "say all of it in one [[change]] table")
		case r == nil:
			report.add(c.At("rule"), c.KeyPath("rule"), e.unknownRule(c.Rule, pack), e.nearRule(c.Rule, report))
		case c.Off:
			e.switchOff(r, c, pack, report)
		default:
			r.change(c, pack, e.Bases, report)
		}
	}
}

// unknownRule says why a pack names a rule in vain.
func (e *Effective) unknownRule(id string, pack *Pack) string {
	for _, r := range pack.Rules {
		if r.ID == id {
			return fmt.Sprintf("rule %q is this pack's own, expected a rule of a parent", id)
		}
	}
	if off := e.switchedOff(id); off != "" {
		return fmt.Sprintf("rule %q is switched off by pack %q", id, off)
	}
	return fmt.Sprintf("no parent has a rule %q", id)
}

func (e *Effective) nearRule(id string, report *mistakes) string {
	ids := make([]string, len(e.Rules))
	for i, r := range e.Rules {
		ids[i] = r.ID
	}
	return report.near(id, ids)
}

// switchOff takes a rule away. Whatever else such a change says would count for
// nothing.
func (e *Effective) switchOff(r *Compiled, c *Change, pack *Pack, report *mistakes) {
	for _, key := range c.Keys() {
		if key != "rule" && key != "reason" && key != "off" {
			report.add(c.KeyAt(key), c.KeyPath(key), fmt.Sprintf("found %s beside off = true, expected a rule and a reason alone", key), "")
		}
	}
	e.remove(r)
	e.Off = append(e.Off, SwitchedOff{r.ID, c.Reason, pack.Head.ID})
}

// change lays a [[change]] of a pack over the rule.
func (c *Compiled) change(by *Change, pack *Pack, bases map[string]Owned[*Base], report *mistakes) {
	c.Given, c.changed = maps.Clone(c.Given), maps.Clone(c.changed)
	l := laying{rule: c, by: by, pack: pack}
	text(l, "title", &c.Title, by.Title)
	text(l, "when", &c.When, by.When)
	text(l, "require", &c.Require, by.Require)
	text(l, "judge_when", &c.JudgeWhen, by.JudgeWhen)
	text(l, "says", &c.Says, by.Says)
	text(l, "remedy", &c.Remedy, by.Remedy)
	text(l, "caution", &c.Caution, by.Caution)
	lay(l, "due", &c.Due, by.Due)
	lay(l, "level", &c.Level, by.Level)
	lay(l, "judge", &c.Judge, by.Judge)
	if len(by.Basis) > 0 {
		c.Basis, c.Given["basis"] = by.Basis, pack.Head.ID
	}
	if len(by.Equivalents) > 0 {
		c.Equivalents = append(slices.Clip(c.Equivalents), said(by.Equivalents, pack)...)
		c.Given["equivalent"] = pack.Head.ID
	}
	if len(by.Samples) > 0 {
		c.addSamples(by.Samples, home{bases, pack.Head.DefaultBase, pack})
	}
	if c.nothingNew(pack) {
		report.add(by.At("rule"), by.KeyPath("rule"), fmt.Sprintf("the change alters nothing of rule %q", c.ID), changeHint(by))
	}
}

func changeHint(by *Change) string {
	if len(by.Samples) > 0 {
		return "give samples alone in [[sample]] tables"
	}
	return "say what is different, such as level = \"warning\", or leave the change out"
}

// nothingNew tells whether every part that the change names is the rule's
// already.
func (c *Compiled) nothingNew(by *Pack) bool {
	for part, pack := range c.Given {
		if pack == by.Head.ID && part != "sample" {
			return false
		}
	}
	return true
}

// laying is one change on its way into a rule.
type laying struct {
	rule *Compiled
	by   *Change
	pack *Pack
}

// lay puts a value in place of the parent's, where it is another; whether it can
// alter outcomes is noted.
func lay[T comparable](l laying, key string, to *T, from *T) bool {
	if from == nil || *from == *to {
		return false
	}
	*to = *from
	l.rule.Given[key] = l.pack.Head.ID
	switch key {
	case "when", "require", "judge", "judge_when", "due":
		l.rule.Reached = append(l.rule.Reached, key)
	}
	return true
}

// text is lay for a text whose mistakes have a place.
func text(l laying, key string, to *string, from *string) {
	if lay(l, key, to, from) {
		if l.rule.changed == nil {
			l.rule.changed = map[string]origin{}
		}
		l.rule.changed[key] = origin{l.by.Ref, l.pack.Name}
	}
}
