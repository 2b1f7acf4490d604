package rules

import (
	"fmt"
	"maps"
	"sort"
	"sync"
)

// inherit lays a pack over its parents.
func inherit(pack *Pack, parents []*Effective, report *mistakes) *Effective {
	e := &Effective{Head: pack.Head, Limits: make(map[string]Owned[*Limit], len(pack.Limits)), Tables: map[string]Owned[*Table]{},
		Bases: map[string]Owned[*Base]{}, unsettled: map[string][2]string{}, Files: []*Pack{pack}}
	e.digest = sync.OnceValue(e.sum)
	for _, parent := range parents {
		e.take(parent, pack, report)
	}
	e.before = figures{maps.Clone(e.Limits), maps.Clone(e.Tables)}
	e.ownLimits(pack, report)
	e.ownTables(pack, report)
	own(e.Bases, pack.Bases, pack)
	for name := range pack.Bases {
		delete(e.unsettled, name)
	}
	e.applyChanges(pack, report)
	e.reach(e.before)
	e.addRules(pack, report)
	e.addSamples(pack, report)
	return e
}

// check refuses what a pack says that cannot be meant.
func (e *Effective) check(pack *Pack, report *mistakes) {
	pack.checkHidden(report)
	e.checkNames(pack, report)
	e.checkSamples(pack, report)
	e.checkUsed(pack, e.before, report)
}

// figures are the limits and tables of the parents.
type figures struct {
	limits map[string]Owned[*Limit]
	tables map[string]Owned[*Table]
}

func own[T any](into map[string]Owned[T], parts map[string]T, pack *Pack) {
	for name, part := range parts {
		into[name] = Owned[T]{part, pack.Head.ID, pack.Name}
	}
}

// take adds what a parent holds. Two parents that say different things are a
// conflict, unless the pack itself settles it.
func (e *Effective) take(parent *Effective, pack *Pack, report *mistakes) {
	settle(e.Limits, parent.Limits, pack.Limits, "limit", pack, report)
	settle(e.Tables, parent.Tables, pack.Tables, "table", pack, report)
	e.takeBases(parent)
	apart := map[string][]string{} // rules in another version than that of an earlier parent, by the pack that holds them
	for _, r := range parent.Rules {
		e.takeRule(r, pack, apart, report)
	}
	for _, holder := range sortedKeys(apart) {
		e.conflictVersions(holder, apart[holder], report)
	}
	for _, off := range parent.Off {
		e.takeOff(off, pack, report)
	}
	for _, f := range parent.Files {
		if !e.holds(f) {
			e.Files = append(e.Files, f)
		}
	}
}

// takeBases adds the base designs of a parent. The samples of each pack keep their
// own; a name that two parents give is refused where a sample of this pack uses it.
func (e *Effective) takeBases(parent *Effective) {
	maps.Copy(e.unsettled, parent.unsettled)
	for name, base := range parent.Bases {
		if twin, ok := e.Bases[name]; ok && twin.Pack != base.Pack {
			e.unsettled[name] = [2]string{twin.Pack, base.Pack}
		}
		e.Bases[name] = base
	}
}

func (e *Effective) takeRule(r *Compiled, pack *Pack, apart map[string][]string, report *mistakes) {
	twin := e.Rule(r.ID)
	switch {
	case twin == nil:
		e.Rules = append(e.Rules, r.inherited())
		if by := e.switchedOff(r.ID); by != "" && !pack.switchesOff(r.ID) {
			e.conflictOff(by, r.ID, report)
		}
	case twin.Pack != r.Pack:
		e.conflict(report, fmt.Sprintf("packs %q and %q both hold a rule %q", twin.Pack, r.Pack, r.ID), "extend one of them only")
	case !maps.Equal(twin.Given, r.Given):
		apart[r.Pack] = append(apart[r.Pack], r.ID)
	}
}

// conflictVersions reports rules of a pack that two parents changed in different
// ways: as one mistake, since it has one cure.
func (e *Effective) conflictVersions(holder string, ids []string, report *mistakes) {
	message := fmt.Sprintf("two parents hold rule %q of pack %q in different versions", ids[0], holder)
	if len(ids) > 1 {
		message = fmt.Sprintf("two parents hold %d rules of pack %q in different versions, such as %q", len(ids), holder, ids[0])
	}
	e.conflict(report, message, "extend one of them only")
}

// takeOff keeps a rule off that a parent switches off. Another parent may have
// brought it: then this pack must say so itself.
func (e *Effective) takeOff(off SwitchedOff, pack *Pack, report *mistakes) {
	for _, known := range e.Off {
		if known == off {
			return
		}
	}
	e.Off = append(e.Off, off)
	if e.Rule(off.Rule) != nil && !pack.switchesOff(off.Rule) {
		e.conflictOff(off.Pack, off.Rule, report)
	}
}

func (p *Pack) switchesOff(rule string) bool {
	for _, c := range p.Changes {
		if c.Off && c.Rule == rule {
			return true
		}
	}
	return false
}

func (e *Effective) conflictOff(by, rule string, report *mistakes) {
	e.conflict(report, fmt.Sprintf("pack %q switches off rule %q, which another parent holds", by, rule),
		"switch it off in this pack too, with a [[change]] table")
}

func (e *Effective) switchedOff(rule string) (pack string) {
	for _, off := range e.Off {
		if off.Rule == rule {
			return off.Pack
		}
	}
	return ""
}

// conflict reports parents that do not agree.
func (e *Effective) conflict(report *mistakes, message, hint string) {
	report.add(e.Head.At("extends"), e.Head.KeyPath("extends"), message, hint)
}

func settle[T any](into, from map[string]Owned[T], own map[string]T, what string, pack *Pack, report *mistakes) {
	for _, name := range sortedKeys(from) {
		part := from[name]
		twin, ok := into[name]
		if _, settled := own[name]; ok && !settled && twin.Pack != part.Pack {
			report.add(pack.Head.At("extends"), pack.Head.KeyPath("extends"),
				fmt.Sprintf("packs %q and %q both hold a %s %q", twin.Pack, part.Pack, what, name),
				fmt.Sprintf("say which %s holds by giving it in this pack", what))
		}
		into[name] = part
	}
}

func sortedKeys[T any](m map[string]T) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

func (e *Effective) addRules(pack *Pack, report *mistakes) {
	for _, r := range pack.Rules {
		twin := e.Rule(r.ID)
		switch {
		case twin == nil || twin.ID != r.ID: // an alias is looked at with all names
			r.begin(pack, e.Bases)
			e.Rules = append(e.Rules, r)
		case twin.place("require").file == pack.Name && twin.Pack == pack.Head.ID:
			report.add(r.At("id"), r.KeyPath("id"), fmt.Sprintf("rule %q stands in this pack twice", r.ID), "")
		default:
			report.add(r.At("id"), r.KeyPath("id"), fmt.Sprintf("rule %q stands in pack %q already", r.ID, twin.Pack),
				"alter a rule of a parent with a [[change]] table")
		}
	}
}
