package rules

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"sort"

	"github.com/ventlint/ventlint/checker/document"
)

// Effective is a pack with all it inherits: what a review runs.
type Effective struct {
	Head   Head
	Limits map[string]Owned[*Limit]
	Tables map[string]Owned[*Table]
	Bases  map[string]Owned[*Base]
	Rules  []*Compiled // parents' first, in the order of the files
	Off    []SwitchedOff
	Files  []*Pack // this pack's file first, then those it extends
}

// Owned is a part of a pack and the id of the pack that it comes from.
type Owned[T any] struct {
	Part T
	Pack string
	file string
}

// SwitchedOff is a rule of a parent that a pack does not apply.
type SwitchedOff struct{ Rule, Reason, Pack string }

// Digest is the SHA-256 of all files of the pack, in order.
func (e *Effective) Digest() string {
	sum := sha256.New()
	for _, p := range e.Files {
		fmt.Fprintf(sum, "%s %d\n", p.Head.ID, len(p.Source))
		sum.Write(p.Source)
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// Rule finds a rule by its id or by one of its earlier ids; nil when there is
// none.
func (e *Effective) Rule(id string) *Compiled {
	for _, r := range e.Rules {
		if r.ID == id {
			return r
		}
		for _, alias := range r.Aliases {
			if alias == id {
				return r
			}
		}
	}
	return nil
}

// inherit lays a pack over its parents.
func inherit(pack *Pack, parents []*Effective, report *mistakes) *Effective {
	e := &Effective{Head: pack.Head, Limits: map[string]Owned[*Limit]{}, Tables: map[string]Owned[*Table]{},
		Bases: map[string]Owned[*Base]{}, Files: []*Pack{pack}}
	for _, parent := range parents {
		e.take(parent, pack, report)
	}
	own(e.Limits, pack.Limits, pack)
	own(e.Tables, pack.Tables, pack)
	own(e.Bases, pack.Bases, pack)
	e.addRules(pack, report)
	e.applyChanges(pack, report)
	return e
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
	settle(e.Bases, parent.Bases, pack.Bases, "base design", pack, report)
	for _, r := range parent.Rules {
		if twin := e.Rule(r.ID); twin == nil {
			clone := *r
			e.Rules = append(e.Rules, &clone)
		} else if twin.Pack != r.Pack {
			report.add(pack.Head.At("extends"), pack.Head.KeyPath("extends"),
				fmt.Sprintf("packs %q and %q both hold a rule %q", twin.Pack, r.Pack, r.ID), "extend one of them only")
		}
	}
	e.Off = append(e.Off, parent.Off...)
	for _, f := range parent.Files {
		if !e.holds(f) {
			e.Files = append(e.Files, f)
		}
	}
}

// Extends tells whether the pack inherits from another.
func (e *Effective) Extends(id string) bool {
	for _, f := range e.Files[1:] {
		if f.Head.ID == id {
			return true
		}
	}
	return false
}

func (e *Effective) holds(file *Pack) bool {
	for _, f := range e.Files {
		if f == file {
			return true
		}
	}
	return false
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
		if twin := e.Rule(r.ID); twin != nil {
			report.add(r.At("id"), r.KeyPath("id"), fmt.Sprintf("rule %q stands in pack %q already", r.ID, twin.Pack),
				"alter a rule of a parent with a [[change]] table")
			continue
		}
		e.Rules = append(e.Rules, newCompiled(r, pack))
	}
}

func (e *Effective) applyChanges(pack *Pack, report *mistakes) {
	for _, c := range pack.Changes {
		r := e.Rule(c.Rule)
		if r == nil {
			report.add(c.At("rule"), c.KeyPath("rule"), fmt.Sprintf("no rule %q to change", c.Rule), nearRule(c.Rule, e))
			continue
		}
		if c.Off {
			e.remove(r)
			e.Off = append(e.Off, SwitchedOff{r.ID, c.Reason, pack.Head.ID})
			continue
		}
		r.change(c, pack)
	}
}

func nearRule(id string, e *Effective) string {
	ids := make([]string, len(e.Rules))
	for i, r := range e.Rules {
		ids[i] = r.ID
	}
	if near := document.Near(id, ids); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	return ""
}

func (e *Effective) remove(r *Compiled) {
	for i := range e.Rules {
		if e.Rules[i] == r {
			e.Rules = append(e.Rules[:i], e.Rules[i+1:]...)
			return
		}
	}
}
